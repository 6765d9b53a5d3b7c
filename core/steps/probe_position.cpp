#include "core/steps/probe_position.h"

#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/probe_position/plan.h"
#include "core/steps/probe_position/points.h"

namespace fettle {
namespace {

constexpr double fewestProbingLines = 2,
                 mostProbingLines = 100;  // a bound against slips; common practice, no source

struct Offset {
  Quantity x, y;
  Place place() const { return {x.value, y.value}; }
};

/// One coordinate of the offset from its differences nozzle − probe.
Quantity offsetFromMarks(const std::vector<double>& differences, const Instrument& nozzle,
                         const Instrument& probe) {
  const auto n = static_cast<double>(differences.size());
  const Quantity mean = meanOfReadings(differences, nozzle, "mm");
  const Contribution parts[] = {
      {*mean.u, mean.dof},
      {probe.r / std::sqrt(12 * n)},
      {probe.limitOfError(mean.value) / std::sqrt(3.0)},
  };
  return combinedQuantity(mean.value, "mm", parts);
}

template <typename Row, typename Value>
std::vector<double> column(const std::vector<Row>& rows, Value value) {
  std::vector<double> values;
  values.reserve(rows.size());
  for (const auto& row : rows) {
    values.push_back(value(row));
  }
  return values;
}

template <typename Row>
void noteReadings(StepResult& result, const std::vector<Row>& rows, const std::vector<double>& x,
                  const std::vector<double>& y, double resolution) {
  if (rows.size() == 1) {
    noteSingleReading(result, Text::tr("The probe offset"));
  }
  std::vector<std::size_t> numbers;
  numbers.reserve(rows.size());
  for (const auto& row : rows) {
    numbers.push_back(row.number);
  }
  noteOutliers(result, x, numbers, resolution, Text::tr("offset x"), "mm");
  noteOutliers(result, y, numbers, resolution, Text::tr("offset y"), "mm");
}

Offset fromMarks(const std::vector<TouchMark>& marks, const StepContext& context, StepResult& result) {
  const auto x = column(marks, [](const TouchMark& mark) { return *mark.nozzleX - *mark.probeX; });
  const auto y = column(marks, [](const TouchMark& mark) { return *mark.nozzleY - *mark.probeY; });
  noteReadings(result, marks, x, y, context.instrument("nozzle_x").r);
  return {offsetFromMarks(x, context.instrument("nozzle_x"), context.instrument("probe_x")),
          offsetFromMarks(y, context.instrument("nozzle_y"), context.instrument("probe_y"))};
}

Offset fromDirect(const std::vector<DirectOffset>& direct, const StepContext& context, StepResult& result) {
  const auto x = column(direct, [](const DirectOffset& row) { return *row.x; });
  const auto y = column(direct, [](const DirectOffset& row) { return *row.y; });
  noteReadings(result, direct, x, y, context.instrument("offset_x").r);
  return {meanOfReadings(x, context.instrument("offset_x"), "mm"),
          meanOfReadings(y, context.instrument("offset_y"), "mm")};
}

std::optional<Offset> offsetOf(const ProbePositionInputs& inputs, const StepContext& context,
                               StepResult& result) {
  const auto marks = included(inputs.marks);
  const auto direct = included(inputs.direct);
  if (marks.empty() && direct.empty()) {
    result.missing.push_back("marks");
    return std::nullopt;
  }
  if (marks.empty()) {
    return fromDirect(direct, context, result);
  }
  if (!direct.empty()) {
    result.addFinding("direct-not-used", Severity::note,
                      Text::tr("Marks and direct offsets were both entered; the marks count."));
  }
  return fromMarks(marks, context, result);
}

std::optional<Place> asFoundOffset(const StepContext& context) {
  const auto x = context.asFoundNumber("probe_offset_x");
  const auto y = context.asFoundNumber("probe_offset_y");
  return x && y ? std::optional(Place{*x, *y}) : std::nullopt;
}

void giveOffset(StepResult& result, const StepContext& context, const std::string& id,
                const Quantity& measured) {
  result.give(id, measured);
  result.propose(id, context.asFoundValue(id), measured);
  if (const auto asFound = context.asFoundNumber(id)) {
    Quantity change = measured;
    change.value -= *asFound;
    result.give(id + "_change", change);
  } else {
    result.withhold(id + "_change", "mm", Text::tr("the offset as found is not known"));
  }
}

/// A limit of the reach: with the offset's uncertainty where the travel ends first, exact where the bed
/// less its margin does.
void giveLimit(StepResult& result, const std::string& id, double limit, double fromTravel,
               const Quantity& offset) {
  Quantity quantity = plainQuantity(limit, "mm");
  if (limit == fromTravel) {
    quantity.u = offset.u;
    quantity.dof = offset.dof;
  }
  result.give(id, quantity);
}

void giveReach(StepResult& result, const ProbePositionInputs& inputs, const std::optional<Bed>& bed,
               const std::optional<Rectangle>& travel, const Offset& offset) {
  if (!bed || !travel) {
    for (const char* id : {"safe_min_x", "safe_max_x", "safe_min_y", "safe_max_y"}) {
      result.withhold(id, "mm", bed ? noTravel() : noBedSize());
    }
    return;
  }
  const Rectangle moved = travel->movedBy(offset.place());
  const Rectangle reach = reachOfTip(*travel, *bed, offset.place(), inputs.margin);
  giveLimit(result, "safe_min_x", reach.minX, moved.minX, offset.x);
  giveLimit(result, "safe_max_x", reach.maxX, moved.maxX, offset.x);
  giveLimit(result, "safe_min_y", reach.minY, moved.minY, offset.y);
  giveLimit(result, "safe_max_y", reach.maxY, moved.maxY, offset.y);
  if (nothingToReach(*travel, *bed, offset.place(), inputs.margin)) {
    result.addFinding(
        "no-reach", Severity::fault,
        say(Text::tr("The probe tip reaches no part of the bed: x {0} … {1} mm and y {2} … {3} mm "
                     "of travel, tip at {4}, {5} mm, leave nothing inside the margin of {6} mm."),
            formatNumber(travel->minX), formatNumber(travel->maxX), formatNumber(travel->minY),
            formatNumber(travel->maxY), formatFixed(offset.x.value, 1), formatFixed(offset.y.value, 1),
            formatNumber(inputs.margin)),
        "config-review");
  }
}

/// Limits the wrong way round are no travel and no bed.
void refuseContradictorySheet(const MachineSheet& sheet) {
  for (const auto& finding : checkMachineSheet(sheet)) {
    if (finding.code == "sheet-range") {
      throw Refusal{say(Text::tr("Machine sheet, {0}"), finding.text)};
    }
  }
}

}  // namespace

void TouchMark::describe(FieldList& columns) {
  const auto coordinate = [&](const char* key, std::optional<double>& member, const std::string& label,
                              const std::string& help, const std::vector<std::string>& words) {
    columns.number(key, member, label, "mm")
        .bounds(-5000, 5000)
        .required()
        .help(help)
        .readWith(instruments::alignmentByEye())
        .alsoNamed(words);
  };
  const std::string nozzle = Text::tr("Carriage coordinate with the nozzle over the mark.");
  const std::string probe = Text::tr("Carriage coordinate with the probe tip over the same mark.");
  coordinate("nozzle_x", nozzleX, Text::tr("Nozzle x"), nozzle, {"nozzle x"});
  coordinate("nozzle_y", nozzleY, Text::tr("Nozzle y"), nozzle, {"nozzle y"});
  coordinate("probe_x", probeX, Text::tr("Probe x"), probe, {"probe x"});
  coordinate("probe_y", probeY, Text::tr("Probe y"), probe, {"probe y"});
}

void DirectOffset::describe(FieldList& columns) {
  columns.number("offset_x", x, Text::tr("Offset x"), "mm")
      .bounds(-500, 500)
      .required()
      .help(Text::tr("Probe tip from the nozzle; plus when the tip is at larger x."))
      .readWith(instruments::steelRule());
  columns.number("offset_y", y, Text::tr("Offset y"), "mm")
      .bounds(-500, 500)
      .required()
      .help(Text::tr("Probe tip from the nozzle; plus when the tip is at larger y."))
      .readWith(instruments::steelRule());
}

void ProbePositionInputs::describe(FieldList& fields) {
  fields.table("marks", marks, Text::tr("Marks"))
      .help(Text::tr("Three marks or more, well apart: the same mark once under the nozzle, once under the "
                     "probe tip."));
  fields.table("direct", direct, Text::tr("Offset measured directly"))
      .help(Text::tr("Instead of marks: the probe tip measured from the nozzle."));
  fields.number("margin", margin, Text::tr("Margin"), "mm")
      .bounds(0, 100)
      .help(Text::tr("Strip along the edge of the bed where no touch is wanted."));
  const auto limit = [&](const char* key, std::optional<double>& member, const std::string& label) {
    fields.number(key, member, label, "mm")
        .bounds(-5000, 5000)
        .help(Text::tr("Where the probe tip is meant to land; blank: as found."));
  };
  limit("probing_min_x", probingMinX, Text::tr("Probing grid from x"));
  limit("probing_max_x", probingMaxX, Text::tr("Probing grid to x"));
  limit("probing_min_y", probingMinY, Text::tr("Probing grid from y"));
  limit("probing_max_y", probingMaxY, Text::tr("Probing grid to y"));
  fields.number("probing_columns", probingColumns, Text::tr("Probing columns"), "1")
      .bounds(fewestProbingLines, mostProbingLines)
      .whole()
      .help(Text::tr("Points along x; blank: as found."));
  fields.number("probing_rows", probingRows, Text::tr("Probing rows"), "1")
      .bounds(fewestProbingLines, mostProbingLines)
      .whole()
      .help(Text::tr("Points along y; blank: as found."));
}

StepResult evaluate(const ProbePositionInputs& inputs, const StepContext& context) {
  refuseContradictorySheet(context.sheet);
  StepResult result;
  PlanOfBed plan;
  plan.bed = bedOf(context.sheet);
  plan.travel = travelOf(context.sheet);
  plan.margin = inputs.margin;
  const PlannedGrid grid = plannedGrid(inputs, context);
  const auto offset = offsetOf(inputs, context, result);
  if (offset) {
    plan.offset = offset->place();
    giveOffset(result, context, "probe_offset_x", offset->x);
    giveOffset(result, context, "probe_offset_y", offset->y);
    giveReach(result, inputs, plan.bed, plan.travel, *offset);
    plan.landings = giveProbingPoints(result, grid, plan, asFoundOffset(context));
  }
  for (const auto& mark : included(inputs.marks)) {
    plan.marks.push_back({*mark.nozzleX, *mark.nozzleY});
  }
  result.charts.push_back(chartOf(plan));
  return result;
}

Step probePositionStep() {
  const Tolerance change{-1.0, 1.0};  // common practice, no source
  Step step;
  step.key = "probe-position";
  step.name = Text::tr("Probe position");
  step.purpose = Text::tr("Where the probe tip sits beside the nozzle, and where it lands on the bed.");
  step.stage = Stage::bed;
  step.heats = true;
  step.moves = true;
  step.caution = Text::tr("Hot nozzle and moving carriage: keep fingers off the bed while it moves.");
  step.headline = {"probe_offset_x", "probe_offset_y"};
  step.results = {
      {"probe_offset_x", "mm", Text::tr("Probe offset x")},
      {"probe_offset_y", "mm", Text::tr("Probe offset y")},
      {"probe_offset_x_change", "mm", Text::tr("Offset x, measured less as found"), change, true},
      {"probe_offset_y_change", "mm", Text::tr("Offset y, measured less as found"), change, true},
      {"safe_min_x", "mm", Text::tr("Tip may touch from x")},
      {"safe_max_x", "mm", Text::tr("Tip may touch to x")},
      {"safe_min_y", "mm", Text::tr("Tip may touch from y")},
      {"safe_max_y", "mm", Text::tr("Tip may touch to y")},
      {"points_off_bed", "1", Text::tr("Probing points off the bed")},
      {"points_in_margin", "1", Text::tr("Probing points in the margin")},
      {"points_out_of_reach", "1", Text::tr("Probing points out of reach")},
      {"points_off_bed_list", "", Text::tr("Off the bed")},
      {"points_in_margin_list", "", Text::tr("In the margin")},
      {"points_out_of_reach_list", "", Text::tr("Out of reach")},
  };
  step.settings = {
      {"probe_offset_x", Text::tr("Probe offset x"), "mm"},
      {"probe_offset_y", Text::tr("Probe offset y"), "mm"},
  };
  for (const auto& field : describedFields<ProbePositionInputs>()) {
    if (field.key.starts_with("probing_")) {  // typed here or as found, under the same key
      step.settings.push_back({field.key, field.label, field.unit});
    }
  }
  step.emptyCharts = {chartOf(PlanOfBed{})};
  return withInputs<ProbePositionInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
