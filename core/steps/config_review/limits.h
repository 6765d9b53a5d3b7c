#pragma once
#include "core/steps/config_review/review.h"

namespace fettle {

/// `travel-beyond` (fault): limits of travel as found that lie outside those of the sheet; proposes the
/// sheet's. `travel-unused` (note): those that stop short of it. `bed-beyond` (fault): a bed as found that
/// reaches beyond the plate. Of limits the wrong way round nothing else is said.
void judgePlaces(StepResult& result, const Review& review, const std::string& axis);

/// `bed-radius` (fault): a disc as found larger than the plate.
void judgeRadius(StepResult& result, const Review& review);

/// `hot_end_limit_C` = the sheet's hot_end_max_C, capped at 240 °C with a polymer tube down to the nozzle
/// (common practice, no source); `bed_limit_C` = the sheet's. `hot-end-limit`, `bed-limit` (fault): the
/// controller allows more; proposes the limit.
void judgeTemperatures(StepResult& result, const Review& review);

/// `<axis>.reachable_speed` = sqrt(a·L), the highest speed between rest and rest on the whole travel L.
/// `speed-never-reached` (caution) when the top speed is above it.
void judgeSpeed(StepResult& result, const Review& review, const std::string& axis);

/// Raises `limits-reversed` (fault) when both limits are known and the wrong way round, and says so.
bool noteReversed(StepResult& result, const Review& review, const std::string& what,
                  const std::string& axis);

/// Lower and upper limit as found: "travel_min_x" and "travel_max_x" for "travel", "x"; none while one is
/// not known or they are the wrong way round.
std::optional<Span> spanFound(const Review& review, const std::string& what, const std::string& axis);

}  // namespace fettle
