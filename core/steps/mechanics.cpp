#include "core/steps/mechanics.h"

#include <algorithm>

#include "core/measure/text.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/mechanics/checks.h"
#include "core/steps/mechanics/diagonals.h"
#include "core/steps/mechanics/drag.h"
#include "core/steps/mechanics/results.h"

namespace fettle {
namespace {

/// One finding for all faces measured once, one for all axes pulled once.
void noteSingles(StepResult& result, const std::vector<MeasuredFace>& faces,
                 const std::vector<AxisDrag>& axes) {
  std::string names;
  for (const auto& face : faces) {
    if (face.differences.size() == 1) {
      names += (names.empty() ? "" : ", ") + face.name;
    }
  }
  const bool oncePulled = std::any_of(axes.begin(), axes.end(), [](const AxisDrag& axis) {
    return axis.counts.size() == 1 && axis.counts.front() == 1;
  });
  if (!names.empty()) {
    noteSingleReading(result, say(Text::tr("The squareness of each of these faces ({0})"), names));
  }
  if (oncePulled) {
    noteSingleReading(result, Text::tr("The drag of an axis pulled at one place"));
  }
}

std::vector<Chart> chartsOf(const std::vector<MeasuredFace>& faces, const std::vector<AxisDrag>& axes,
                            const StepContext& context) {
  return {diagonalsChart(faces, context), dragChart(axes)};
}

}  // namespace

StepResult evaluate(const MechanicsInputs& inputs, const StepContext& context) {
  StepResult result;
  if (inputs.checks.empty() && included(inputs.diagonals).empty() && included(inputs.drag).empty()) {
    result.want({"checks"});
    result.charts = chartsOf({}, {}, context);
    return result;
  }
  const auto faces = facesOf(result, inputs.diagonals);
  const auto axes = dragOf(inputs.drag);
  giveChecks(result, inputs.checks);
  giveDiagonals(result, faces, context);
  static const Step step = mechanicsStep();
  for (const auto& axis : axes) {
    const std::string spread = keysOf<MechanicsResults>().dragSpread(axis.axis).id;
    giveDrag(result, axis, context, toleranceOf(step, context, spread));
  }
  noteSingles(result, faces, axes);
  result.addFinding("start-drying", Severity::note,
                    Text::tr("First thing of the day: start drying the filament; it takes hours."),
                    "filament-feed");
  result.charts = chartsOf(faces, axes, context);
  return result;
}

Step mechanicsStep() {
  Step step;
  step.key = "mechanics";
  step.name = Text::tr("Frame and mechanics");
  step.purpose = Text::tr("Whether frame and moving parts are complete, square, tight and free.");
  step.stage = Stage::makeSafe;
  step.caution = Text::tr("Power off and unplugged. Moving parts pinch, and edges are sharp.");
  step.benchMinutes = 45;  // common practice, no source
  step.plans = {{"five-places", Text::tr("Five places of each axis"), "drag",
                 [](const Json&, const StepContext&) { return dragPlaces(); }}};
  step.emptyCharts = chartsOf({}, {}, {});
  return describedStep<MechanicsResults, MechanicsInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
