#include "core/steps/mechanics.h"

#include <algorithm>

#include "core/measure/text.h"
#include "core/steps/contract/reading_findings.h"

namespace fettle {
namespace {

const Tolerance allowedSpread{std::nullopt, 0.30};  // common practice, no source

Tolerance spreadTolerance(const StepContext& context, const std::string& axis) {
  return context.changedTolerance("mechanics." + axis + ".drag_spread").value_or(allowedSpread);
}

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

void MechanicsInputs::describe(FieldList& fields) {
  fields.checklist("checks", checks, Text::tr("Checks"), mechanicsItems())
      .help(Text::tr("Power off and unplugged. What the machine does not have is in order."));
  fields.table("diagonals", diagonals, Text::tr("Diagonals"))
      .help(Text::tr("Of each face of the frame, corner to corner."));
  fields.table("drag", drag, Text::tr("Drag"))
      .help(Text::tr("Motors without power: the force on a pull scale at five places of each axis."));
}

StepResult evaluate(const MechanicsInputs& inputs, const StepContext& context) {
  StepResult result;
  const auto faces = facesOf(inputs.diagonals);
  const auto axes = dragOf(inputs.drag);
  if (inputs.checks.empty() && faces.empty() && axes.empty()) {
    result.missing.emplace_back("checks");
  } else {
    giveChecks(result, inputs.checks);
    giveDiagonals(result, faces, context);
    for (const auto& axis : axes) {
      giveDrag(result, axis, context, spreadTolerance(context, axis.axis));
    }
    noteSingles(result, faces, axes);
    result.addFinding("start-drying", Severity::note,
                      Text::tr("First thing of the day: start drying the filament; it takes hours."),
                      "filament-feed");
  }
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
  step.results = {
      {"checks_done", "1", Text::tr("Checks answered")},
      {"checks_open", "1", Text::tr("Checks open")},
      {"checks_failed", "1", Text::tr("Checks not in order"), {std::nullopt, 0.0}, true},
      {"<face>.diagonal_difference", "mm", Text::tr("Diagonals, one less the other"), {}, true},
      {"<axis>.drag_N", "N", Text::tr("Mean drag")},
      {"<axis>.drag_spread", "1", Text::tr("Drag, greatest less least over mean"), allowedSpread, true},
  };
  step.emptyCharts = chartsOf({}, {}, {});
  return withInputs<MechanicsInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
