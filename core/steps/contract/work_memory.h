#pragma once
#include <any>
#include <memory>
#include <utility>
#include <vector>

namespace fettle {

/// What steps have worked out before, so that an entry beside a large capture need not wait for the capture
/// to be examined once more. Kept by who evaluates again and again (the bench); the results of a step are
/// the same without it. For one thread at a time.
class WorkMemory {
 public:
  /// What was made for an equal key, or makes it. `Key` has ==; it holds all that the value depends on.
  template <typename Value, typename Key, typename Make>
  std::shared_ptr<const Value> recall(const Key& key, const Make& make) {
    using Known = std::pair<Key, std::shared_ptr<const Value>>;
    for (const std::any& entry : m_entries) {
      const auto* known = std::any_cast<Known>(&entry);
      if (known && known->first == key) {
        return known->second;
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
  static constexpr std::size_t mostKept = 12;
  std::vector<std::any> m_entries;  ///< the latest last
};

}  // namespace fettle
