#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/steps/config_review/inputs.h"
#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

/// What the controller believes, beside what is there.
struct Review {
  const MachineSheet& sheet;
  SettingValues values;
  std::map<std::string, std::string> rows;  ///< path of the row a setting was listed in, by its id

  std::optional<double> number(const std::string& id) const;
  std::string word(const std::string& id) const;
  /// Where the user can change it: the row of the list; empty for what was known before.
  std::string at(const std::string& id) const;
};

/// The values known before, and over them those of matched rows, which go to `result.found` too. Notes
/// `match-suggested` for rows that fit a setting and are not matched, `not-matched` for those that are
/// left, `differs-from-as-found` where a row says something else than was known. A blank value is wanted.
/// What is refused (see config_review.h) is known of no setting: nothing is computed from it, nor from the
/// value before.
Review reviewOf(StepResult& result, const std::vector<ListedValue>& rows, const StepContext& context);

/// "18 m/s2" in the unit of the setting; one sentence when it cannot be that.
tl::expected<SettingValue, std::string> valueOf(const std::string& text, const std::string& setting);

/// Limits of one axis that are both known.
struct Span {
  double low = 0, high = 0;
};

}  // namespace fettle
