#include "core/steps/heater_control/charts.h"

#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr std::size_t mostPoints = 2000;  // of a simulated curve

Series seriesOf(std::string name, SeriesRole role, std::vector<double> x, std::vector<double> y,
                int hue = 0) {
  Series series;
  series.name = std::move(name);
  series.role = role;
  series.x = std::move(x);
  series.y = std::move(y);
  series.hue = hue;
  return series;
}

Chart chartOf(const char* view, std::string title, Axis y, std::string whenEmpty) {
  Chart chart;
  chart.view = view;
  chart.title = std::move(title);
  chart.x = {Text::tr("time"), "s"};
  chart.y = std::move(y);
  chart.whenEmpty = std::move(whenEmpty);
  return chart;
}

void addStep(Chart& chart, const StepAnswer& step) {
  std::vector<double> fitted;
  for (std::size_t i = 0; i < step.time.size(); ++i) {
    fitted.push_back(step.temperature[i] - step.fit.residuals[i]);
  }
  chart.series.push_back(
      seriesOf(Text::tr("first order with dead time"), SeriesRole::model, step.time, fitted, 1));
  chart.lines.push_back({Text::tr("duty changes"), step.stepTime, true});
}

LimitLine targetLine(double target) {
  return {say(Text::tr("target {0} °C"), formatPlain(target)), target, false};
}

void addRelay(Chart& chart, const RelaySwing& relay) {
  for (const double start : relay.starts) {
    chart.lines.push_back({Text::tr("on"), start, true});
  }
  chart.bands.push_back({Text::tr("swing"), relay.low, relay.high, false});
  if (relay.target) {
    chart.lines.push_back(targetLine(*relay.target));
  }
}

void addSettled(Chart& chart, const HoldAnswer& hold) {
  if (hold.settledAt) {
    chart.lines.push_back(
        {say(Text::tr("settled at {0} s"), formatFixed(*hold.settledAt, 1)), *hold.settledAt, true});
  }
}

void addHold(Chart& chart, const HoldAnswer& hold) {
  chart.lines.push_back(targetLine(hold.target));
  chart.bands.push_back({Text::tr("±1 °C"), hold.target - holdBand, hold.target + holdBand, false});
  addSettled(chart, hold);
}

/// Near its target, where a degree is seen.
Chart holdChart(const HoldAnswer& hold) {
  Chart chart =
      chartOf("hold", Text::tr("Departure from target"), {Text::tr("temperature less target"), "C"},
              Text::tr("Choose the log of an approach to a target."));
  chart.series.push_back(seriesOf(Text::tr("measured"), SeriesRole::trace, hold.time, hold.error));
  chart.series.push_back(
      seriesOf(Text::tr("mean over 5 s"), SeriesRole::model, hold.meanTime, hold.meanError, 1));
  for (const double limit : {-holdBand, holdBand}) {
    chart.lines.push_back({say(Text::tr("limit {0} °C"), formatNumber(limit)), limit, false});
  }
  addSettled(chart, hold);
  return chart;
}

Chart responseChart(const HeaterPicture& picture) {
  Chart chart = chartOf("response", Text::tr("Temperature"), {Text::tr("temperature"), "C"},
                        Text::tr("Choose a log of time and temperature, with duty and target where the "
                                 "machine gives them."));
  if (picture.log) {
    chart.series.push_back(
        seriesOf(Text::tr("measured"), SeriesRole::trace, picture.log->time, picture.log->temperature));
  }
  if (picture.step) {
    addStep(chart, *picture.step);
  }
  if (picture.relay) {
    addRelay(chart, *picture.relay);
  }
  if (picture.hold) {
    addHold(chart, *picture.hold);
  }
  if (picture.log && picture.maximum) {
    const double breakOff = breakOffShare * *picture.maximum;
    chart.lines.push_back({say(Text::tr("break off at {0} °C"), formatPlain(breakOff)), breakOff, false});
  }
  return chart;
}

Chart residualChart(const StepAnswer& step) {
  Chart chart = chartOf("residuals", Text::tr("Residuals"), {Text::tr("measured less fitted"), "C"},
                        Text::tr("Choose the log of a step test."));
  chart.series.push_back(
      seriesOf(Text::tr("measured less fitted"), SeriesRole::trace, step.time, step.fit.residuals));
  chart.lines.push_back({Text::tr("no difference"), 0, false});
  return chart;
}

/// The duty holds until the next row: drawn as stairs.
Chart dutyChart(const HeaterLog& log) {
  Chart chart = chartOf("duty", Text::tr("Duty"), {Text::tr("duty"), "1"},
                        Text::tr("Choose a log that holds the duty."));
  std::vector<double> x;
  std::vector<double> y;
  for (std::size_t i = 0; i < log.rows(); ++i) {
    if (i > 0 && log.duty[i] != log.duty[i - 1]) {
      x.push_back(log.time[i]);
      y.push_back(log.duty[i - 1]);
    }
    x.push_back(log.time[i]);
    y.push_back(log.duty[i]);
  }
  chart.series.push_back(seriesOf(Text::tr("duty"), SeriesRole::trace, std::move(x), std::move(y)));
  return chart;
}

Series thinned(const SimulatedRule& rule, SeriesRole role, int hue) {
  const std::size_t count = rule.response.time.size();
  const std::size_t stride = std::max<std::size_t>(count / mostPoints, 1);
  std::vector<double> x;
  std::vector<double> y;
  for (std::size_t i = 0; i < count; i += stride) {
    x.push_back(rule.response.time[i]);
    y.push_back(rule.response.output[i]);
  }
  return seriesOf(rule.name, role, std::move(x), std::move(y), hue);
}

Chart rulesChart(const Simulation& simulation) {
  Chart chart = chartOf("rules", Text::tr("Heating up by each rule"), {Text::tr("temperature"), "C"},
                        Text::tr("A step test, or a typed gain, time constant and dead time, and a target "
                                 "show how each rule would heat up."));
  for (std::size_t i = 0; i < simulation.rules.size(); ++i) {
    const bool best = simulation.proposed == i;
    chart.series.push_back(thinned(simulation.rules[i], best ? SeriesRole::model : SeriesRole::comparison,
                                   static_cast<int>(i)));
    if (best) {
      chart.lines.push_back({Text::tr("fan on"), simulation.rules[i].fanFrom, true});
    }
  }
  if (!simulation.rules.empty()) {
    chart.lines.push_back(targetLine(simulation.target));
  }
  return chart;
}

}  // namespace

std::vector<Chart> heaterCharts(const HeaterPicture& picture) {
  std::vector<Chart> charts;
  if (picture.hold && !picture.hold->time.empty()) {
    charts.push_back(holdChart(*picture.hold));
  }
  charts.push_back(responseChart(picture));
  if (picture.step) {
    charts.push_back(residualChart(*picture.step));
  }
  if (picture.log && !picture.log->duty.empty()) {
    charts.push_back(dutyChart(*picture.log));
  }
  if (!picture.hold && (!picture.relay || !picture.simulation.rules.empty())) {
    charts.push_back(rulesChart(picture.simulation));
  }
  for (Chart& chart : charts) {
    chart.about = picture.about;
  }
  return charts;
}

}  // namespace fettle
