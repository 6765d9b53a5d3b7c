#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/fields/accepted_numbers.h"
#include "core/steps/contract/result_key.h"

namespace fettle {

/// A setting a controller may list.
struct ListedSetting {
  SettingDescription description;                 ///< its id has no <axis> left
  AcceptedNumbers numbers;                        ///< when it is no word
  std::vector<std::string> words;                 ///< allowed ones, when it is no number
  std::vector<std::vector<std::string>> namedBy;  ///< one word of each group stands in a name that fits
};

/// All that can be matched.
const std::vector<ListedSetting>& listedSettings();
const ListedSetting* findListed(const std::string& id);

/// The same as the step describes them: one for all axes.
std::vector<SettingDescription> reviewedSettings();

/// The setting whose words a name holds, most words first; none when none or several fit equally well.
std::optional<std::string> suggestedSetting(const std::string& name);

}  // namespace fettle
