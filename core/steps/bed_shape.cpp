#include "core/steps/bed_shape.h"

#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/bed_shape/charts.h"
#include "core/steps/bed_shape/density.h"
#include "core/steps/bed_shape/faults.h"
#include "core/steps/bed_shape/form.h"
#include "core/steps/bed_shape/results.h"

namespace fettle {
namespace {

constexpr double shortestSoak = 15;  // min; common practice, no source

std::vector<ResultId> resultsOfHeights() {
  const auto& key = keysOf<BedShapeResults>();
  return {key.flatnessMinimumZone,
          key.flatnessLeastSquares,
          key.rms,
          key.rangeRaw,
          key.tiltX,
          key.tiltY,
          key.bowX,
          key.bowY,
          key.twist,
          key.edgeDrop,
          key.densityError,
          key.proposedSpacing,
          key.proposedColumns,
          key.proposedRows};
}

void noteLeftOut(StepResult& result, const BedHeights& heights) {
  for (const auto& contradiction : heights.contradictions) {
    result.refuse(contradiction);
  }
  if (heights.repeated > 0) {
    result.addFinding(
        "repeated-point", Severity::note,
        say(Text::tr("Points that repeat another one exactly count once: {0} left out."), heights.repeated),
        {}, "points");
  }
  if (heights.blankCells > 0) {
    result.addFinding("blank-cells", Severity::note,
                      say(Text::tr("Blank cells of the grid are left out ({0}); the heights are computed "
                                   "as points."),
                          heights.blankCells),
                      {}, "grid");
  }
}

/// The heights of the field that counts; none while neither holds one.
std::optional<BedHeights> heightsOf(const BedShapeInputs& inputs, StepResult& result) {
  const auto points = included(inputs.points);
  const bool anyCell = !inputs.grid.empty() && !inputs.grid.z.array().isNaN().all();
  if (!anyCell) {
    return points.empty() ? std::nullopt : std::optional(heightsOfPoints(points));
  }
  if (!points.empty()) {
    result.addFinding("points-not-used", Severity::note,
                      Text::tr("A grid and points were both entered; the grid counts."), {}, "points");
  }
  return heightsOfGrid(inputs.grid);
}

ProbeTrust probeOf(const StepContext& context, StepResult& result) {
  ProbeTrust probe{context.instrument("z"), 0};
  if (const auto s = context.acceptedQuantity("probe-repeatability", "s_mm")) {
    probe.scatter = s->value;
  } else {
    result.addFinding(
        "probe-scatter-unknown", Severity::note,
        Text::tr("The scatter of the probe is not known and is taken as 0: U holds its resolution "
                 "and limit of error only."),
        "probe-repeatability");
  }
  return probe;
}

void noteSoak(StepResult& result, const BedShapeInputs& inputs) {
  if (inputs.soakMinutes && *inputs.soakMinutes < shortestSoak) {
    result.addFinding(
        "short-soak", Severity::caution,
        say(Text::tr("The bed soaked {0} min; its shape settles only after {1} min, a thick plate "
                     "after 30 (common practice, no source)."),
            formatNumber(*inputs.soakMinutes), formatNumber(shortestSoak)),
        {}, "soak_minutes");
  }
  if (!inputs.soakMinutes || !inputs.bedTemperature) {
    result.addFinding(
        "heat-not-noted", Severity::note,
        Text::tr("Bed temperature or soak time was not noted; a bed has another shape when cold."), {},
        inputs.bedTemperature ? "soak_minutes" : "bed_C");
  }
}

void withholdAdvice(StepResult& result, const std::string& why) {
  const auto& key = keysOf<BedShapeResults>();
  result.withhold(key.proposedSpacing, why);
  result.withhold(key.proposedColumns, why);
  result.withhold(key.proposedRows, why);
}

void giveDensity(StepResult& result, const GridReadings& grid, const GridFaults& faults, double scatter) {
  const auto& key = keysOf<BedShapeResults>();
  const auto advice = densityAdvice(grid, scatter);
  if (!advice) {
    const std::string why =
        Text::tr("grid too small or even: no advice (odd counts of 7 or more each way are needed)");
    result.withhold(key.densityError, why);
    withholdAdvice(result, why);
    return;
  }
  result.give(key.densityError, advice->error);
  if (faults.hasDrop()) {
    withholdAdvice(result, Text::tr("the surface must not be used: an edge lies off the bed"));
    return;
  }
  result.give(key.proposedSpacing, advice->spacing);
  result.give(key.proposedColumns, advice->columns);
  result.give(key.proposedRows, advice->rows);
}

GridFaults giveGridResults(StepResult& result, const GridReadings& grid, double scatter) {
  GridFaults faults = findFaults(grid);
  reportFaults(result, grid, faults);
  giveDensity(result, grid, faults, scatter);
  return faults;
}

void withholdGridResults(StepResult& result, const BedHeights& heights) {
  const auto& key = keysOf<BedShapeResults>();
  const std::string why = heights.blankCells > 0
                              ? Text::tr("the grid has blank cells")
                              : Text::tr("the points do not fill a grid to within 0.1 mm");
  result.withhold(key.edgeDrop, why);
  result.withhold(key.densityError, why);
  withholdAdvice(result, why);
  result.addFinding(
      "not-a-grid", Severity::note,
      heights.blankCells > 0
          ? Text::tr("The grid has blank cells: edges off the bed, spikes and steps were not looked for.")
          : Text::tr("The points do not fill a grid to within 0.1 mm: edges off the bed, spikes and steps "
                     "were not looked for."),
      {}, heights.field);
}

/// What was computed, as far as it went.
struct BedPicture {
  BedHeights heights;
  std::optional<BedForm> form;
  std::optional<GridFaults> faults;
};

/// Throws Refusal for heights that make no plane, or a grid that cannot be there.
void giveResults(StepResult& result, const BedShapeInputs& inputs, const StepContext& context,
                 BedPicture& picture) {
  auto heights = heightsOf(inputs, result);
  if (!heights) {
    for (const auto& id : resultsOfHeights()) {
      result.wantFor(id, {"grid"});
    }
    return;
  }
  picture.heights = std::move(*heights);
  noteLeftOut(result, picture.heights);
  const ProbeTrust probe = probeOf(context, result);
  picture.form = giveForm(result, picture.heights, probe);
  if (picture.heights.grid) {
    picture.faults = giveGridResults(result, *picture.heights.grid, probe.scatter);
  } else {
    withholdGridResults(result, picture.heights);
  }
  noteSoak(result, inputs);
}

}  // namespace

StepResult evaluate(const BedShapeInputs& inputs, const StepContext& context) {
  StepResult result;
  BedPicture picture;
  if (!result.attempt({}, [&] { giveResults(result, inputs, context, picture); })) {
    const std::string why = result.findings.back().text;
    for (const auto& id : resultsOfHeights()) {
      if (!result.find(id.id)) {
        result.withhold(id, why);
      }
    }
  }
  result.charts = bedShapeCharts(picture.heights, picture.form, picture.faults);
  return result;
}

Step bedShapeStep() {
  Step step;
  step.key = "bed-shape";
  step.name = Text::tr("Bed shape");
  step.purpose = Text::tr("How the hot bed tilts and bends, and whether every point was really on it.");
  step.stage = Stage::bed;
  step.heats = true;
  step.moves = true;
  step.caution = Text::tr("Hot bed and nozzle: keep hands off the bed while it is probed.");
  step.entryWidth = EntryWidth::wide;
  step.benchMinutes = 10;
  step.waitMinutes = 25;
  step.reads = {"probe-repeatability.s_mm"};
  step.emptyCharts = bedShapeCharts({}, std::nullopt, std::nullopt);
  return describedStep<BedShapeResults, BedShapeInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
