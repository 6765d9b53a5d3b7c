#include "core/steps/probe_position.h"

#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/probe_position/plan.h"
#include "core/steps/probe_position/points.h"
#include "core/steps/probe_position/results.h"

namespace fettle {
namespace {

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
  if (marks.empty()) {
    return direct.empty() ? std::nullopt : std::optional(fromDirect(direct, context, result));
  }
  if (!direct.empty()) {
    result.addFinding("direct-not-used", Severity::note,
                      Text::tr("Marks and direct offsets were both entered; the marks count."));
  }
  return fromMarks(marks, context, result);
}

std::optional<Place> offsetInForce(const StepContext& context) {
  const auto& key = keysOf<ProbePositionResults>();
  const auto x = context.inForceNumber(key.offsetXSetting);
  const auto y = context.inForceNumber(key.offsetYSetting);
  return x && y ? std::optional(Place{*x, *y}) : std::nullopt;
}

void giveOffset(StepResult& result, const StepContext& context, const Quantity& measured,
                const ResultId& offset, const ResultId& change, const SettingId& setting) {
  result.give(offset, measured);
  result.propose(setting, measured);
  result.attempt({change}, [&] {
    if (const auto inForce = context.inForceNumber(setting)) {
      Quantity difference = measured;
      difference.value -= *inForce;
      result.give(change, difference);
    } else {
      result.withhold(change, Text::tr("the probe offset in force is not known"));
    }
  });
}

/// A limit of the reach: with the offset's uncertainty where the travel ends first, exact where the bed
/// less its margin does.
void giveLimit(StepResult& result, const ResultId& id, double limit, double fromTravel,
               const Quantity& offset) {
  Quantity quantity = plainQuantity(limit, "mm");
  if (limit == fromTravel) {
    quantity.u = offset.u;
    quantity.dof = offset.dof;
  }
  result.give(id, quantity);
}

void giveReach(StepResult& result, const PlanOfBed& plan, const Offset& offset) {
  const auto& key = keysOf<ProbePositionResults>();
  if (!plan.bed || !plan.travel || !plan.margin) {
    const std::string why = !plan.bed ? plan.whyNoBed : !plan.travel ? plan.whyNoTravel : std::string();
    for (const ResultId& id :
         {ResultId(key.safeMinX), ResultId(key.safeMaxX), ResultId(key.safeMinY), ResultId(key.safeMaxY)}) {
      result.withhold(id, why);
    }
    return;
  }
  const Rectangle& travel = *plan.travel;
  const Rectangle moved = travel.movedBy(offset.place());
  const Rectangle reach = reachOfTip(travel, *plan.bed, offset.place(), *plan.margin);
  giveLimit(result, key.safeMinX, reach.minX, moved.minX, offset.x);
  giveLimit(result, key.safeMaxX, reach.maxX, moved.maxX, offset.x);
  giveLimit(result, key.safeMinY, reach.minY, moved.minY, offset.y);
  giveLimit(result, key.safeMaxY, reach.maxY, moved.maxY, offset.y);
  if (nothingToReach(travel, *plan.bed, offset.place(), *plan.margin)) {
    result.addFinding(
        "no-reach", Severity::fault,
        say(Text::tr("The probe tip reaches no part of the bed: x {0} … {1} mm and y {2} … {3} mm "
                     "of travel, tip at {4}, {5} mm, leave nothing inside the margin of {6} mm."),
            formatNumber(travel.minX), formatNumber(travel.maxX), formatNumber(travel.minY),
            formatNumber(travel.maxY), formatFixed(offset.x.value, 1), formatFixed(offset.y.value, 1),
            formatNumber(*plan.margin)),
        "config-review");
  }
}

/// What the results wait for while no offset was measured.
void waitForOffset(StepResult& result) {
  const auto& key = keysOf<ProbePositionResults>();
  for (const ResultId& id :
       {ResultId(key.offsetX), ResultId(key.offsetY), ResultId(key.changeX), ResultId(key.changeY),
        ResultId(key.safeMinX), ResultId(key.safeMaxX), ResultId(key.safeMinY), ResultId(key.safeMaxY),
        ResultId(key.pointsOffBed), ResultId(key.pointsInMargin), ResultId(key.pointsOutOfReach)}) {
    result.wantFor(id, {"marks"});
  }
}

/// Limits of bed or travel that are the wrong way round, in one sentence.
std::optional<std::string> contradictionOn(const MachineSheet& sheet) {
  for (const auto& finding : checkMachineSheet(sheet)) {
    if (finding.code == "sheet-range") {
      return say(Text::tr("Machine sheet, {0}"), finding.text);
    }
  }
  return std::nullopt;
}

MachineSheet travelAlone(const MachineSheet& sheet) {
  MachineSheet part;
  part.travelMinX = sheet.travelMinX;
  part.travelMaxX = sheet.travelMaxX;
  part.travelMinY = sheet.travelMinY;
  part.travelMaxY = sheet.travelMaxY;
  return part;
}

MachineSheet bedAlone(const MachineSheet& sheet) {
  MachineSheet part;
  part.bedShape = sheet.bedShape;
  part.bedMinX = sheet.bedMinX;
  part.bedMaxX = sheet.bedMaxX;
  part.bedMinY = sheet.bedMinY;
  part.bedMaxY = sheet.bedMaxY;
  return part;
}

/// Bed and travel as the sheet says; what contradicts itself is refused and not known.
PlanOfBed planOfSheet(StepResult& result, const MachineSheet& sheet) {
  PlanOfBed plan;
  plan.bed = bedOf(sheet);
  plan.whyNoBed = noBedSize();
  plan.travel = travelOf(sheet);
  plan.whyNoTravel = noTravel();
  if (const auto wrong = contradictionOn(bedAlone(sheet))) {
    result.refuse({*wrong});
    plan.bed.reset();
    plan.whyNoBed = *wrong;
  }
  if (const auto wrong = contradictionOn(travelAlone(sheet))) {
    result.refuse({*wrong});
    plan.travel.reset();
    plan.whyNoTravel = *wrong;
  }
  return plan;
}

/// Three marks well apart where the nozzle and, by the offset in force, the tip can go.
Json threeMarks(const Json& /*inputs*/, const StepContext& context) {
  const auto bed = bedOf(context.sheet);
  const auto travel = travelOf(context.sheet);
  Json rows = Json::array();
  if (!bed || !travel) {
    return rows;
  }
  Rectangle area = travel->cutTo(bed->box);
  if (const auto offset = offsetInForce(context)) {
    area = area.cutTo(travel->movedBy(*offset));
  }
  if (area.empty()) {
    return rows;
  }
  constexpr std::pair<double, double> parts[] = {{0.25, 0.25}, {0.75, 0.25}, {0.5, 0.75}};
  for (const auto& [alongX, alongY] : parts) {
    rows.push_back({{"nozzle_x", std::round(area.minX + alongX * (area.maxX - area.minX))},
                    {"nozzle_y", std::round(area.minY + alongY * (area.maxY - area.minY))}});
  }
  return rows;
}

}  // namespace

StepResult evaluate(const ProbePositionInputs& inputs, const StepContext& context) {
  const auto& key = keysOf<ProbePositionResults>();
  StepResult result;
  PlanOfBed plan = planOfSheet(result, context.sheet);
  if (std::isfinite(inputs.margin)) {
    plan.margin = inputs.margin;
  }
  if (const auto offset = offsetOf(inputs, context, result)) {
    plan.offset = offset->place();
    giveOffset(result, context, offset->x, key.offsetX, key.changeX, key.offsetXSetting);
    giveOffset(result, context, offset->y, key.offsetY, key.changeY, key.offsetYSetting);
    giveReach(result, plan, *offset);
    result.attempt({key.pointsOffBed, key.pointsInMargin, key.pointsOutOfReach}, [&] {
      plan.landings = giveProbingPoints(result, plannedGrid(inputs, context), plan, offsetInForce(context));
    });
  } else {
    waitForOffset(result);
  }
  for (const auto& mark : included(inputs.marks)) {
    plan.marks.push_back({*mark.nozzleX, *mark.nozzleY});
  }
  result.charts.push_back(chartOf(plan));
  return result;
}

Step probePositionStep() {
  Step step;
  step.key = "probe-position";
  step.name = Text::tr("Probe position");
  step.purpose = Text::tr("Where the probe tip sits beside the nozzle, and where it lands on the bed.");
  step.stage = Stage::bed;
  step.heats = true;
  step.moves = true;
  step.caution = Text::tr("Hot nozzle and moving carriage: keep fingers off the bed while it moves.");
  step.benchMinutes = 15;
  step.waitMinutes = 15;
  step.readsSheet = {"travel_min_x", "travel_max_x", "travel_min_y", "travel_max_y", "bed_shape",
                     "bed_min_x",    "bed_max_x",    "bed_min_y",    "bed_max_y",    "bed_radius"};
  step.plans = {{"three-marks", Text::tr("Three marks"), "marks", &threeMarks}};
  step.emptyCharts = {chartOf(PlanOfBed{})};
  return describedStep<ProbePositionResults, ProbePositionInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
