#include "core/steps/bed_shape.h"

#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/bed_shape/charts.h"
#include "core/steps/bed_shape/density.h"
#include "core/steps/bed_shape/faults.h"
#include "core/steps/bed_shape/form.h"

namespace fettle {
namespace {

constexpr double shortestSoak = 15;  // min; common practice, no source

std::optional<BedHeights> heightsOf(const BedShapeInputs& inputs, StepResult& result) {
  const auto points = included(inputs.points);
  if (!inputs.grid.empty()) {
    if (!points.empty()) {
      result.addFinding("points-not-used", Severity::note,
                        Text::tr("A grid and points were both entered; the grid counts."));
    }
    return heightsOfGrid(inputs.grid);
  }
  if (points.empty()) {
    result.missing.push_back("grid");
    return std::nullopt;
  }
  BedHeights heights = heightsOfPoints(points);
  if (heights.repeated > 0) {
    result.addFinding("repeated-point", Severity::note,
                      say(Text::tr("Points that repeat another one exactly count once: {0} left out."),
                          heights.repeated));
  }
  return heights;
}

ProbeTrust probeOf(const StepContext& context, StepResult& result) {
  ProbeTrust probe{context.instrument("z"), 0};
  if (const auto s = context.acceptedNumber("probe-repeatability", "s_mm")) {
    probe.scatter = *s;
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
            formatNumber(*inputs.soakMinutes), formatNumber(shortestSoak)));
  }
  if (!inputs.soakMinutes || !inputs.bedTemperature) {
    result.addFinding(
        "heat-not-noted", Severity::note,
        Text::tr("Bed temperature or soak time was not noted; a bed has another shape when cold."));
  }
}

void withholdAdvice(StepResult& result, const std::string& why) {
  result.withhold("recommended_spacing", "mm", why);
  result.withhold("recommended_columns", "1", why);
  result.withhold("recommended_rows", "1", why);
}

void giveDensity(StepResult& result, const GridReadings& grid, const GridFaults& faults, double scatter) {
  const auto advice = densityAdvice(grid, scatter);
  if (!advice) {
    const std::string why =
        Text::tr("grid too small or even: no advice (odd counts of 7 or more each way are needed)");
    result.withhold("density_error_mm", "mm", why);
    withholdAdvice(result, why);
    return;
  }
  result.give("density_error_mm", advice->error, "mm");
  if (faults.hasDrop()) {
    withholdAdvice(result, Text::tr("the surface must not be used: an edge lies off the bed"));
    return;
  }
  result.give("recommended_spacing", advice->spacing, "mm");
  result.give("recommended_columns", advice->columns, "1");
  result.give("recommended_rows", advice->rows, "1");
}

GridFaults giveGridResults(StepResult& result, const GridReadings& grid, double scatter) {
  GridFaults faults = findFaults(grid);
  reportFaults(result, grid, faults);
  giveDensity(result, grid, faults, scatter);
  return faults;
}

void withholdGridResults(StepResult& result) {
  const std::string why = Text::tr("the points do not fill a grid to within 0.1 mm");
  result.withhold("edge_drop", "mm", why);
  result.withhold("density_error_mm", "mm", why);
  withholdAdvice(result, why);
  result.addFinding(
      "not-a-grid", Severity::note,
      Text::tr("The points do not fill a grid to within 0.1 mm: edges off the bed, spikes and steps "
               "were not looked for."));
}

}  // namespace

void BedShapeInputs::describe(FieldList& fields) {
  fields.grid("grid", grid, Text::tr("Grid of heights"), "mm")
      .bounds(-1000, 1000)
      .help(Text::tr("Heights as probed, one row for each y; plus is up."));
  fields.table("points", points, Text::tr("Points"))
      .help(Text::tr("Instead of a grid: three points or more, anywhere on the bed."));
  fields.number("bed_C", bedTemperature, Text::tr("Bed temperature"), "C")
      .bounds(-20, 300)
      .help(Text::tr("While probing; best that of printing."));
  fields.number("soak_minutes", soakMinutes, Text::tr("Soaked"), "min")
      .bounds(0, 1440)
      .help(Text::tr("Time at this temperature before probing: 15 min, thick plates 30."));
}

StepResult evaluate(const BedShapeInputs& inputs, const StepContext& context) {
  StepResult result;
  const auto heights = heightsOf(inputs, result);
  if (!heights) {
    result.charts = bedShapeCharts({}, std::nullopt, std::nullopt);
    return result;
  }
  const ProbeTrust probe = probeOf(context, result);
  const BedForm form = giveForm(result, *heights, probe);
  std::optional<GridFaults> faults;
  if (heights->grid) {
    faults = giveGridResults(result, *heights->grid, probe.scatter);
  } else {
    withholdGridResults(result);
  }
  noteSoak(result, inputs);
  result.charts = bedShapeCharts(*heights, form, faults);
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
  step.headline = {"flatness_mz"};
  step.reads = {"probe-repeatability.s_mm"};
  step.results = {
      {"flatness_mz", "mm", Text::tr("Flatness, minimum zone"), {}, true},
      {"flatness_ls", "mm", Text::tr("Flatness, least squares")},
      {"rms", "mm", Text::tr("Root mean square from the plane")},
      {"range_raw", "mm", Text::tr("Range of the raw heights")},
      {"tilt_x", "mm/100mm", Text::tr("Tilt along x")},
      {"tilt_y", "mm/100mm", Text::tr("Tilt along y")},
      {"bow_x", "mm", Text::tr("Bow along x")},
      {"bow_y", "mm", Text::tr("Bow along y")},
      {"twist", "mm", Text::tr("Twist")},
      {"edge_drop", "mm", Text::tr("Largest step at an edge"), {}, true},
      {"density_error_mm", "mm", Text::tr("Error between the points of half the grid")},
      {"recommended_spacing", "mm", Text::tr("Grid spacing that is enough")},
      {"recommended_columns", "1", Text::tr("Columns at that spacing")},
      {"recommended_rows", "1", Text::tr("Rows at that spacing")},
  };
  step.emptyCharts = bedShapeCharts({}, std::nullopt, std::nullopt);
  return withInputs<BedShapeInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
