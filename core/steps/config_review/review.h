#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/config_review.h"

namespace fettle {

/// What the controller believes, beside what is there.
struct Review {
  const MachineSheet& sheet;
  SettingValues values;

  std::optional<double> number(const std::string& id) const;
  std::string word(const std::string& id) const;
};

/// The values of matched rows. Notes `match-suggested` for rows that fit a setting and are not matched,
/// `not-matched` for those that are left, `differs-from-as-found` where a row says something else than was
/// known. Blank values are named in `result.missing`. Throws Refusal (see config_review.h).
SettingValues matchedValues(StepResult& result, const std::vector<ListedValue>& rows,
                            const SettingValues& asFound);

/// Throws Refusal for a value as found that its setting cannot have.
void refuseImpossible(const SettingValues& asFound);

/// "18 m/s2" in the unit of the setting; one sentence when it cannot be that.
tl::expected<SettingValue, std::string> valueOf(const std::string& text, const std::string& setting);

/// Limits of one axis that are both known.
struct Span {
  double low = 0, high = 0;
};

}  // namespace fettle
