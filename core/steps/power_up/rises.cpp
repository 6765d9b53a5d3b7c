#include "core/steps/power_up/rises.h"

#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/contract/heaters.h"
#include "core/steps/contract/result_name.h"
#include "core/steps/power_up/results.h"

namespace fettle {
namespace {

constexpr double leastRise = 1.5;  // °C; common practice, no source
constexpr double scatters = 5;     // of the sensor at rest; common practice, no source

double windowOf(const HeatRise& row) {
  return row.window.value_or(riseWindowOf(row.heater));
}

void judgeRise(StepResult& result, const HeatRise& row, const Name& name) {
  const auto& key = keysOf<PowerUpResults>();
  const std::string at = fmt::format("rises[{}]", row.number);
  const double rise = *row.end - *row.start;
  const double window = windowOf(row);
  const double scaled = rise * window / *row.seconds;
  const double limit = std::max(leastRise, scatters * row.restScatter.value_or(0));
  result.give(key.rate(name), 60 * rise / *row.seconds);
  result.give(key.riseInWindow(name), scaled);
  result.give(key.riseLimit(name), limit);
  // A rise reached early needs no scaling up; one read for longer is scaled down to the window.
  const double counted = *row.seconds < window ? rise : scaled;
  const double other = row.otherRise.value_or(0);
  if (other > rise && other >= limit) {
    result.addFinding(
        "sensors-swapped", Severity::fault,
        say(Text::tr("{0}: its own sensor rose by {1} °C, another by {2} °C. Sensors or heaters are "
                     "swapped. Switch off: this heater is not under control."),
            heaterName(row.heater), formatFixed(rise, 1), formatFixed(other, 1)),
        "safety", at);
  }
  if (counted >= limit) {
    return;
  }
  if (*row.seconds < window) {
    result.addFinding(
        "window-not-full", Severity::caution,
        say(Text::tr("{0}: {1} °C in {2} s says nothing yet; {3} °C are expected within {4} s."),
            heaterName(row.heater), formatFixed(rise, 1), formatNumber(*row.seconds), formatFixed(limit, 1),
            formatNumber(window)),
        {}, at);
    return;
  }
  result.addFinding(
      "sensor-not-moving", Severity::fault,
      say(Text::tr("{0}: its sensor rose by {1} °C in {2} s, less than {3} °C. Switch off at once: "
                   "the heater is dead, or it heats and the sensor does not see it."),
          heaterName(row.heater), formatFixed(scaled, 1), formatNumber(window), formatFixed(limit, 1)),
      "safety", at);
}

}  // namespace

void judgeRises(StepResult& result, const std::vector<HeatRise>& rows) {
  DistinctNames names;
  for (const auto& row : rows) {
    const std::string id = names.next(row.heater);
    const std::string heater = heaterName(row.heater);
    judgeRise(result, row,
              Name(id, id == row.heater ? heater : say(Text::tr("{0}, row {1}"), heater, row.number)));
  }
}

Chart risesChart(const std::vector<HeatRise>& rows) {
  Chart chart;
  chart.view = "rises";
  chart.title = Text::tr("First rises");
  chart.x = {Text::tr("time"), "s"};
  chart.y = {Text::tr("temperature"), "C"};
  chart.whenEmpty = Text::tr("Enter rises: start, end and seconds of a short heating.");
  int hue = 0;
  for (const auto& row : rows) {
    Series line;
    line.name = heaterName(row.heater);
    line.role = SeriesRole::trace;
    line.x = {0, *row.seconds};
    line.y = {*row.start, *row.end};
    line.hue = hue++;
    chart.series.push_back(std::move(line));
  }
  return chart;
}

}  // namespace fettle
