#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/maths/hinge.h"
#include "core/measure/quantity.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

/// Why a result cannot be given: a reason, with the paths of what was refused, or those of the inputs it
/// waits for.
struct Reason {
  std::string why;
  std::vector<std::string> lacks;

  void withhold(StepResult& result, const ResultId& id) const {
    if (why.empty()) {
      result.wantFor(id, lacks);
      return;
    }
    result.withhold(id, why);
    result.values.back().lacks = lacks;
  }
};

/// What steps or graded piece say about the flow limit.
struct FlowLimit {
  std::optional<Quantity> limit;  ///< none when it lies beyond the tested flows
  std::optional<double> lower;    ///< 95 %; none when it lies below the tested flows or cannot be told
  Reason noLimit, noLower;        ///< when there is none
  std::optional<maths::Hinge> hinge;
};

}  // namespace fettle
