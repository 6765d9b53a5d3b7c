#pragma once
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "core/steps/contract/result_key.h"

namespace fettle {

class ResultList;

/// Refines the result just described; every function returns the same object.
class ResultHandle {
 public:
  ResultHandle(ResultList& list, std::size_t index) : m_list(&list), m_index(index) {}
  /// One of at most three values in the answer band, in the order described.
  ResultHandle& headline();
  /// Carries a verdict; without a default tolerance until the user names one.
  ResultHandle& judged();
  /// Carries a verdict against this tolerance, unless the user changes it.
  ResultHandle& within(std::optional<double> low, std::optional<double> high);
  /// A text that is one of these words.
  ResultHandle& words(std::vector<Choice> words);

 private:
  ResultDescription& description() const;

  ResultList* m_list;
  std::size_t m_index;
};

/// Refines the setting just described.
class SettingHandle {
 public:
  SettingHandle(ResultList& list, std::size_t index) : m_list(&list), m_index(index) {}
  /// Adopting the setting counts as a change of this part group: its steps become due.
  SettingHandle& disturbs(std::string partGroup);
  /// A setting that is one of these words.
  SettingHandle& words(std::vector<Choice> words);

 private:
  SettingDescription& description() const;

  ResultList* m_list;
  std::size_t m_index;
};

/// The one place where a results struct names what its step gives. `describe(ResultList&)` calls one
/// function per member:
///
///   struct SpoolWeightResults {
///     ResultKey<> meanMass;
///     ResultKey<1> massOf;                 // one for each spool
///     void describe(ResultList& results) {
///       results.quantity("mean_mass", meanMass, Text::tr("Mean mass"), "g").headline();
///       results.quantity("<spool>.mass", massOf, Text::tr("Mass"), "g");
///     }
///   };
///
/// A step reaches its keys by keysOf<SpoolWeightResults>().
class ResultList {
 public:
  /// How the <name> of the ids described after this is called, by its keys.
  void name(const std::string& name, std::vector<Choice> choices);

  template <std::size_t Names>
  ResultHandle quantity(std::string id, ResultKey<Names>& key, std::string label, std::string unit) {
    key = ResultKey<Names>({id, unit, m_choices});
    return addResult({std::move(id), std::move(unit), std::move(label)});
  }
  template <std::size_t Names>
  ResultHandle text(std::string id, TextKey<Names>& key, std::string label) {
    key = TextKey<Names>({id, {}, m_choices});
    return addResult({std::move(id), {}, std::move(label)});
  }
  /// @param unit unit key; empty for a word
  template <std::size_t Names>
  SettingHandle setting(std::string id, SettingKey<Names>& key, std::string label, std::string unit) {
    key = SettingKey<Names>({id, unit, m_choices});
    return addSetting({std::move(id), std::move(label), std::move(unit)});
  }

  const std::vector<ResultDescription>& results() const { return m_results; }
  const std::vector<SettingDescription>& settings() const { return m_settings; }
  const std::vector<std::string>& headlines() const { return m_headlines; }
  const std::map<std::string, std::vector<Choice>>& choices() const { return m_choices; }

 private:
  friend class ResultHandle;
  friend class SettingHandle;
  ResultHandle addResult(ResultDescription result);
  SettingHandle addSetting(SettingDescription setting);

  std::vector<ResultDescription> m_results;
  std::vector<SettingDescription> m_settings;
  std::vector<std::string> m_headlines;
  std::map<std::string, std::vector<Choice>> m_choices;
};

/// The keys of a results struct, as it describes them.
template <typename Results>
const Results& keysOf() {
  static const Results keys = [] {
    Results described;
    ResultList list;
    described.describe(list);
    return described;
  }();
  return keys;
}

}  // namespace fettle
