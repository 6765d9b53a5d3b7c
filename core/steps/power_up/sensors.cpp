#include "core/steps/power_up/sensors.h"

#include <algorithm>
#include <set>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/heaters.h"
#include "core/steps/power_up/results.h"

namespace fettle {
namespace {

Tolerance restTolerance(const StepContext& context, const std::string& id) {
  return context.changedTolerance("power-up." + id).value_or(Tolerance{-restLimit, restLimit});
}

Quantity roomReading(double room, const StepContext& context) {
  const double reading[] = {room};
  return meanOfReadings(reading, context.instrument("room_C"), "C");
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
        "temperature-sensor", fmt::format("sensors[{}]", row.number));
  }
}

void giveDeviation(StepResult& result, const RestReading& row, const PowerUpInputs& inputs,
                   const StepContext& context) {
  const ResultId id = keysOf<PowerUpResults>().restDeviation(row.heater);
  if (!inputs.room) {
    result.wantFor(id, {"room_C"});
    return;
  }
  Quantity deviation = roomReading(*inputs.room, context);
  deviation.value = *row.indicated - *inputs.room;
  result.give(id, deviation);
  noteOffAtRest(result, row, *inputs.room, deviation, restTolerance(context, id.id));
}

}  // namespace

void judgeSensors(StepResult& result, const PowerUpInputs& inputs, const StepContext& context) {
  const auto rows = included(inputs.sensors);
  std::set<std::string> seen;
  for (const auto& row : rows) {
    if (!seen.insert(row.heater).second) {
      continue;
    }
    const auto again = std::find_if(rows.begin(), rows.end(), [&](const RestReading& other) {
      return other.heater == row.heater && other.number != row.number;
    });
    result.attempt({keysOf<PowerUpResults>().restDeviation(row.heater)}, [&] {
      if (again != rows.end()) {
        throw Refusal{
            say(Text::tr("Sensors at rest, row {0}: {1} is there twice; one row a sensor is needed."),
                again->number, heaterName(row.heater)),
            fmt::format("sensors[{}]", again->number)};
      }
      giveDeviation(result, row, inputs, context);
    });
  }
}

Chart restChart(const PowerUpInputs& inputs, const StepContext& context) {
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
    points.x.push_back(static_cast<double>(row.number));
    points.y.push_back(*row.indicated);
  }
  if (!points.x.empty()) {
    const Tolerance allowed = restTolerance(context, "<heater>.rest_deviation_C");
    const double expanded =
        inputs.room ? expandedUncertainty(roomReading(*inputs.room, context)).value_or(0) : 0;
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

}  // namespace fettle
