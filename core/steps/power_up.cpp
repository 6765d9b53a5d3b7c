#include "core/steps/power_up.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/heaters.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/power_up/devices.h"
#include "core/steps/power_up/rises.h"

namespace fettle {
namespace {

constexpr double restLimit = 3;  // °C
constexpr const char* restDeviation = "<heater>.rest_deviation_C";

Instrument roomThermometer() {
  return {Text::tr("room thermometer"), 0.1, 1.0, 0, "C"};
}

std::vector<Choice> firstHeatItems() {
  return {
      {"steps_of_50", Text::tr("heated in steps of 50 °C")},
      {"ventilated", Text::tr("room ventilated")},
      {"attended", Text::tr("somebody stood by all the time")},
      {"no_smoke", Text::tr("no smoke, no smell of burning, no discolouring")},
      {"terminals", Text::tr("terminals tightened again after the first heat cycle, cold and unplugged")},
      {"nozzle", Text::tr("nozzle tightened hot")},
  };
}

Tolerance restTolerance(const StepContext& context, const std::string& id) {
  return context.changedTolerance("power-up." + id).value_or(Tolerance{-restLimit, restLimit});
}

void noteOffAtRest(StepResult& result, const RestReading& row, double room, const Quantity& deviation,
                   const Tolerance& allowed) {
  const Verdict verdict = judge(deviation, allowed).verdict;
  const bool off = judge(plainQuantity(deviation.value, "C"), allowed).verdict == Verdict::fail;
  if (verdict == Verdict::fail || (verdict == Verdict::undecided && off)) {
    result.addFinding(
        "sensor-off-at-rest", verdict == Verdict::fail ? Severity::fault : Severity::caution,
        say(Text::tr("{0}: the sensor shows {1} °C cold, the room has {2} °C. Let the machine cool "
                     "down; if it stays, sensor, lead or sensor setting is wrong."),
            heaterName(row.heater), formatNumber(*row.indicated), formatNumber(room)),
        "temperature-sensor");
  }
}

/// One finding for all that was read once.
void noteSingles(StepResult& result, const PowerUpInputs& inputs) {
  const bool room = inputs.room && !included(inputs.sensors).empty();
  if (room && inputs.tripTime) {
    noteSingleReading(result, Text::tr("Each of two values, room temperature and time to the trip,"));
  } else if (room || inputs.tripTime) {
    noteSingleReading(result,
                      room ? Text::tr("The temperature of the room") : Text::tr("The time to the trip"));
  }
}

Quantity roomReading(double room, const StepContext& context) {
  const double reading[] = {room};
  return meanOfReadings(reading, context.instrument("room_C"), "C");
}

void judgeSensors(StepResult& result, const PowerUpInputs& inputs, const StepContext& context) {
  std::set<std::string> seen;
  const auto rows = included(inputs.sensors);
  if (!rows.empty() && !inputs.room) {
    result.missing.push_back("room_C");
  }
  for (const auto& row : rows) {
    if (row.heater.empty() || !row.indicated) {
      result.missing.push_back("sensors[" + std::to_string(row.number) + "]." +
                               (row.heater.empty() ? "heater" : "indicated_C"));
      continue;
    }
    if (!seen.insert(row.heater).second) {
      throw Refusal{
          say(Text::tr("Sensors at rest, row {0}: {1} is there twice; one row a sensor is needed."),
              row.number, heaterName(row.heater))};
    }
    if (!inputs.room) {
      continue;
    }
    Quantity deviation = roomReading(*inputs.room, context);
    deviation.value = *row.indicated - *inputs.room;
    const std::string id = row.heater + ".rest_deviation_C";
    result.give(id, deviation);
    noteOffAtRest(result, row, *inputs.room, deviation, restTolerance(context, id));
  }
}

void judgeGuard(StepResult& result, const PowerUpInputs& inputs, const StepContext& context) {
  if (inputs.tripTime && inputs.tripped && !*inputs.tripped) {
    throw Refusal{say(Text::tr("Runaway guard: it did not trip but a time of {0} s was entered; leave the "
                               "time blank, or answer that it tripped."),
                      formatNumber(*inputs.tripTime))};
  }
  if (inputs.tripTime) {
    const double reading[] = {*inputs.tripTime};
    result.give("trip_s", meanOfReadings(reading, context.instrument("trip_s"), "s"));
    return;
  }
  if (inputs.tripped && *inputs.tripped) {
    result.withhold("trip_s", "s", Text::tr("the time to the trip was not entered"));
    return;
  }
  result.withhold("trip_s", "s", Text::tr("the runaway guard has not tripped"));
  if (inputs.tripped) {
    result.addFinding(
        "guard-no-trip", Severity::fault,
        Text::tr("The runaway guard did not trip with the heater lead unplugged. Do not heat: a "
                 "sensor that falls out would heat without end."),
        "config-review");
  } else {
    result.addFinding(
        "guard-not-proved", Severity::fault,
        Text::tr("The runaway guard is not proved yet: heater lead unplugged cold with the mains off, "
                 "then a target of 50 °C must trip."));
  }
}

void judgeFirstHeat(StepResult& result, const std::vector<ChecklistAnswer>& answers) {
  std::string open;
  for (const auto& item : firstHeatItems()) {
    const auto is = [&](bool ok) {
      return std::any_of(answers.begin(), answers.end(), [&](const ChecklistAnswer& answer) {
        return answer.item == item.key && answer.ok && *answer.ok == ok;
      });
    };
    if (item.key == "no_smoke" && is(false)) {
      result.addFinding(
          "smoke", Severity::fault,
          Text::tr("Smoke or discolouring was seen at the first heat. Off, unplugged, and find the "
                   "place before anything heats again."),
          "safety");
    } else if (is(false) || !is(true)) {
      open += (open.empty() ? "" : "; ") + item.label;
    }
  }
  if (!open.empty()) {
    result.addFinding("first-heat-open", Severity::caution, say(Text::tr("First heat, open: {0}."), open));
  }
}

/// @param expanded U of what a sensor departs from the room, °C
Chart restChart(const PowerUpInputs& inputs, const Tolerance& allowed, double expanded) {
  Chart chart;
  chart.view = "rest";
  chart.title = Text::tr("Sensors at rest");
  chart.x = countedAxis(Text::tr("sensor"));
  chart.y = {Text::tr("indicated"), "C"};
  chart.whenEmpty = Text::tr("Enter the room and what each sensor shows with everything cold.");
  Series points;
  points.name = Text::tr("sensors");
  for (const auto& row : included(inputs.sensors)) {
    chart.x.nameThing(row.number, heaterName(row.heater));
    if (row.indicated) {
      points.x.push_back(static_cast<double>(row.number));
      points.y.push_back(*row.indicated);
    }
  }
  if (!points.x.empty()) {
    const std::vector<double> ofEach(points.x.size(), expanded);
    addWithUncertainty(chart, std::move(points), ofEach);
    if (inputs.room) {
      chart.lines.push_back(
          {say(Text::tr("room {0} °C"), formatNumber(*inputs.room)), *inputs.room, false});
    }
    if (inputs.room && allowed.low && allowed.high) {
      const double low = *inputs.room + *allowed.low, high = *inputs.room + *allowed.high;
      chart.bands.push_back(
          {say(Text::tr("allowed {0} … {1} °C"), formatPlain(low), formatPlain(high)), low, high, false});
    }
  }
  return chart;
}

}  // namespace

void DeviceCheck::describe(FieldList& columns) {
  columns.choice("device", device, Text::tr("What is tried"), devicesToTry());
  columns.text("which", which, Text::tr("Which"))
      .help(Text::tr("Axis, fan or sensor, where there are several."));
  columns.text("expected", expected, Text::tr("Expected"));
  columns.text("observed", observed, Text::tr("Observed"));
  columns.yesNo("ok", ok, Text::tr("Ok"));
}

void RestReading::describe(FieldList& columns) {
  columns.choice("heater", heater, Text::tr("Sensor of"), heaterChoices());
  columns.number("indicated_C", indicated, Text::tr("Indicated"), "C").bounds(-273, 1500);
}

void HeatRise::describe(FieldList& columns) {
  columns.choice("heater", heater, Text::tr("Heater"), heaterChoices());
  columns.number("start_C", start, Text::tr("Start"), "C").bounds(-60, 600);
  columns.number("end_C", end, Text::tr("End"), "C").bounds(-60, 600);
  columns.number("seconds", seconds, Text::tr("Time"), "s").bounds(0.5, 3600);
  columns.number("other_rise_C", otherRise, Text::tr("Greatest rise of another sensor"), "C")
      .bounds(-100, 600)
      .help(Text::tr("In the same time."));
  columns.number("rest_s_C", restScatter, Text::tr("Scatter at rest"), "C")
      .bounds(0, 50)
      .help(Text::tr("Standard deviation of the sensor before heating; blank: below 0.3 °C."));
  columns.number("rise_window_s", window, Text::tr("Window"), "s")
      .bounds(1, 600)
      .help(Text::tr("Time within which a rise must show; blank: hot end 15, others 90."));
}

void PowerUpInputs::describe(FieldList& fields) {
  fields.table("devices", devices, Text::tr("Devices"))
      .help(Text::tr("One row for each thing tried: what should happen, what did. Directions and switches "
                     "by hand before any homing."));
  fields.number("room_C", room, Text::tr("Room"), "C").bounds(-20, 60).readWith(roomThermometer());
  fields.table("sensors", sensors, Text::tr("Sensors at rest"))
      .help(Text::tr("With everything cold for some hours."));
  fields.yesNo("tripped", tripped, Text::tr("Runaway guard tripped"))
      .help(Text::tr("Heater lead unplugged cold with the mains off, then a target of 50 °C."));
  fields.number("trip_s", tripTime, Text::tr("Time to the trip"), "s")
      .bounds(0, 3600)
      .readWith(instruments::stopwatch());
  fields.table("rises", rises, Text::tr("First rises"))
      .help(
          Text::tr("One heater at a time, from cold: has its own sensor moved, and more than the others?"));
  fields.checklist("first_heat", firstHeat, Text::tr("First heat"), firstHeatItems());
}

StepResult evaluate(const PowerUpInputs& inputs, const StepContext& context) {
  StepResult result;
  const bool begun = !inputs.devices.empty() || !inputs.sensors.empty() || inputs.room || inputs.tripped ||
                     inputs.tripTime || !inputs.rises.empty() || !inputs.firstHeat.empty();
  if (!begun) {
    result.missing.push_back("devices");
  } else {
    judgeDevices(result, included(inputs.devices));
    judgeSensors(result, inputs, context);
    judgeGuard(result, inputs, context);
    judgeRises(result, included(inputs.rises));
    judgeFirstHeat(result, inputs.firstHeat);
    noteSingles(result, inputs);
    result.give("faults",
                static_cast<double>(std::count_if(
                    result.findings.begin(), result.findings.end(),
                    [](const Finding& finding) { return finding.severity == Severity::fault; })),
                "1");
  }
  const double expanded =
      inputs.room ? expandedUncertainty(roomReading(*inputs.room, context)).value_or(0) : 0;
  result.charts = {restChart(inputs, restTolerance(context, restDeviation), expanded),
                   risesChart(included(inputs.rises))};
  return result;
}

Step powerUpStep() {
  Step step;
  step.key = "power-up";
  step.name = Text::tr("Power-up check");
  step.purpose = Text::tr("Whether the machine does what it is told, cold and at its first heat.");
  step.stage = Stage::makeSafe;
  step.heats = true;
  step.moves = true;
  step.caution = Text::tr(
      "First motion and first heat: a hand on the stop, nobody else near, stay until it is cold again. "
      "Plug "
      "and unplug leads only with the mains off.");
  step.results = {
      {"faults", "1", Text::tr("Faults"), {std::nullopt, 0.0}, true},
      {"devices_wrong", "1", Text::tr("Devices wrong")},
      {restDeviation, "C", Text::tr("Cold, less room"), {-restLimit, restLimit}, true},
      {"trip_s", "s", Text::tr("Runaway guard trips after"), {}, true},
      {"<heater>.rate_C_per_min", "C/min", Text::tr("Rate")},
      {"<heater>.rise_in_window_C", "C", Text::tr("Rise in the window")},
      {"<heater>.rise_limit_C", "C", Text::tr("Least rise")},
  };
  step.emptyCharts = {restChart({}, {}, 0), risesChart({})};
  return withInputs<PowerUpInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
