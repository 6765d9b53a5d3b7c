#pragma once
#include <array>
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/fields/field.h"
#include "core/measure/verdict.h"

namespace fettle {

/// A result a step can give. The id may hold <names>: "<axis>.<position>.mode_<k>_hz".
struct ResultDescription {
  std::string id;
  std::string unit;  ///< unit key; empty: a text
  std::string label;
  Tolerance tolerance = {};        ///< default; the user may change it per machine
  bool judged = false;             ///< carries a verdict, so a tolerance may be set
  std::vector<Choice> words = {};  ///< of a text that is one of several words
};

/// A setting of the controller as a step knows it: proposed, or read as found.
struct SettingDescription {
  std::string id;                  ///< may hold <names>: "<axis>.acceleration"
  std::string label;               ///< as said at the machine
  std::string unit;                ///< unit key; empty for a word
  std::string disturbs = {};       ///< part group that adopting it sets off; empty for none
  std::vector<Choice> words = {};  ///< of a setting that is one of several words
};

/// What stands for one <name> of an id: an axis, a heater, the number of a mode.
struct Name {
  std::string key;    ///< as part of the id
  std::string label;  ///< as people say it; empty: by the choices of the step, else the key itself

  // NOLINTBEGIN(google-explicit-constructor): a key alone is a name
  Name(const char* word) : key(word) {}
  Name(std::string word) : key(std::move(word)) {}
  Name(std::size_t number) : key(std::to_string(number)) {}
  Name(int number) : key(std::to_string(number)) {}
  // NOLINTEND(google-explicit-constructor)
  Name(std::string word, std::string said) : key(std::move(word)), label(std::move(said)) {}
};

/// Results, texts and settings have ids of different types, so that none is given in the place of another.
enum class IdKind { result, text, setting };

/// An id with its unit and the labels of its names. Only keys make one.
template <IdKind Kind>
struct TypedId {
  std::string id;
  std::string unit;
  std::vector<std::string> names;
};
using ResultId = TypedId<IdKind::result>;
using TextId = TypedId<IdKind::text>;
using SettingId = TypedId<IdKind::setting>;

namespace detail {
/// An id pattern, its unit, and how its names are called.
struct KeyPattern {
  std::string pattern, unit;
  std::map<std::string, std::vector<Choice>> choices;  ///< by the <name> of the pattern

  /// Throws std::logic_error when the pattern holds another number of <names>.
  void expectNames(std::size_t count) const;
  std::string fill(const std::vector<Name>& names) const;
  std::vector<std::string> labels(const std::vector<Name>& names) const;
};
}  // namespace detail

/// The typed id of a result, text or setting with `Names` places to fill. Described once in the results
/// struct of a step (see result_list.h); what is not described there cannot be given:
///   result.give(key.modeHz(axis, position, k), value);
template <IdKind Kind, std::size_t Names>
class IdKey {
 public:
  IdKey() = default;
  explicit IdKey(detail::KeyPattern pattern) : m_pattern(std::move(pattern)) {
    m_pattern.expectNames(Names);
  }
  template <typename... Filled>
  TypedId<Kind> operator()(Filled&&... filled) const {
    static_assert(sizeof...(Filled) == Names, "one name for each <name> of the id");
    const std::vector<Name> names{Name(std::forward<Filled>(filled))...};
    return {m_pattern.fill(names), m_pattern.unit, m_pattern.labels(names)};
  }
  // NOLINTNEXTLINE(google-explicit-constructor): a key without names is an id
  operator TypedId<Kind>() const requires(Names == 0) { return (*this)(); }

 private:
  detail::KeyPattern m_pattern;
};

template <std::size_t Names = 0>
using ResultKey = IdKey<IdKind::result, Names>;
template <std::size_t Names = 0>
using TextKey = IdKey<IdKind::text, Names>;
template <std::size_t Names = 0>
using SettingKey = IdKey<IdKind::setting, Names>;

/// "x.acceleration" matches "<axis>.acceleration": every <name> stands for one part between dots.
bool matchesPattern(const std::string& id, const std::string& pattern);

/// What stands for the <names> of a pattern in an id, in order: {"x", "2"} of "x.mode_2_hz". Nothing when
/// the id does not match.
std::optional<std::vector<std::string>> namesIn(const std::string& id, const std::string& pattern);
/// The <names> of a pattern: {"axis", "k"} of "<axis>.mode_<k>_hz".
std::vector<std::string> namesOf(const std::string& pattern);
/// What a key is called that stands for a <name>, by its choices; without one the key itself.
std::string labelOfName(const std::map<std::string, std::vector<Choice>>& choices, const std::string& name,
                        const std::string& key);

}  // namespace fettle
