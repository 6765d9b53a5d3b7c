#pragma once
#include <optional>
#include <vector>

#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/filament_feed/inputs.h"

namespace fettle {

/// What was drawn at one speed.
struct DrawsAtSpeed {
  double speed = 0;  ///< mm/s
  std::vector<Draw> draws;
};

struct DrawPicture {
  std::vector<Draw> counted, leftOut;  ///< those with a speed; left out: for slip
  std::vector<Draw> excluded;          ///< by the user
  std::vector<double> speeds;          ///< of two or more, and what was drawn there
  std::vector<Quantity> means;
};

/// The draws that can be drawn; nothing is computed.
DrawPicture pictureOf(const std::vector<Draw>& draws);

/// Gives `drawn_ratio` and, where speeds differ, `speed_<k>.drawn_ratio` and `speed_<k>.slip` = 1 − its
/// ratio over that at the slowest speed, k counted from the slowest.
///
/// Ratio of n draws: u² = s²/n, the two resolutions over the commanded length each divided by n, and the
/// limit of error once over the mean length commanded (twice where two instruments were used). In a slip
/// the limit of error cancels and the scatter is pooled over the speeds. The fall over speed is significant
/// when the slope of the ratio, with its scatter and the resolution, is below zero at 5 % one-sided
/// (Student's t); then only the draws at the slowest speed count. That takes three draws. A draw whose mark
/// did not come nearer is refused and left out; throws Refusal where no other is there.
std::optional<Quantity> giveDraws(StepResult& result, const std::vector<Draw>& draws,
                                  const StepContext& context, DrawPicture& picture);

}  // namespace fettle
