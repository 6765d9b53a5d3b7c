#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/step_result.h"

namespace fettle {

/// A number that a part of the step cannot do without.
struct NeededEntry {
  const char* path;
  std::optional<double> value;  ///< NaN when it was refused

  bool isRefused() const;
  bool isThere() const { return value && !isRefused(); }
};

/// Whether all these entries are there. If not, the results wait for them; of the entries those that are
/// blank are missing, those that were refused have their finding.
bool areEntered(StepResult& result, const std::vector<ResultId>& ids,
                const std::vector<NeededEntry>& entries);

/// Withholds results for something at a path that was refused.
void withholdRefused(StepResult& result, const std::vector<ResultId>& ids, const std::string& why,
                     const std::string& at);

}  // namespace fettle
