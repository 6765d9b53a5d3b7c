#pragma once
#include <algorithm>
#include <any>
#include <memory>
#include <utility>
#include <vector>

namespace fettle {

/// What steps have worked out before, so that an entry beside a large capture need not wait for the capture
/// to be examined once more. Kept by who evaluates again and again (the bench); the results of a step are
/// the same without it. What was not asked for the longest time is forgotten first. For one thread at a
/// time.
class WorkMemory {
 public:
  /// What was made for an equal key, or makes it. `Key` has ==; it holds all that the value depends on.
  template <typename Value, typename Key, typename Make>
  std::shared_ptr<const Value> recall(const Key& key, const Make& make) {
    using Known = std::pair<Key, std::shared_ptr<const Value>>;
    for (auto entry = m_entries.begin(); entry != m_entries.end(); ++entry) {
      const auto* known = std::any_cast<Known>(&*entry);
      if (known && known->first == key) {
        std::rotate(entry, entry + 1, m_entries.end());
        return std::any_cast<Known>(&m_entries.back())->second;
      }
    }
    auto value = std::make_shared<const Value>(make());
    if (m_entries.size() == mostKept) {
      m_entries.erase(m_entries.begin());
    }
    m_entries.emplace_back(Known{key, value});
    return value;
  }

 private:
  /// What a resonance run usually holds at most: two captures each of two axes at three positions, and of
  /// each axis its search and its curves. Fewer would forget just what is asked for next. An analysis with
  /// its picture takes megabytes, so not everything ever looked at is kept.
  static constexpr std::size_t mostKept = 2 * 2 * 3 + 2 * 2;
  std::vector<std::any> m_entries;  ///< the one asked for last at the end
};

}  // namespace fettle
