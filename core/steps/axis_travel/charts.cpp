#include "core/steps/axis_travel/charts.h"

#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr int upHue = 0, downHue = 1;

Series series(std::string name, SeriesRole role, int hue) {
  Series made;
  made.name = std::move(name);
  made.role = role;
  made.hue = hue;
  return made;
}

double spanOf(const AxisRuns& runs) {
  return runs.targets.back().target - runs.targets.front().target;
}

void addSide(Chart& chart, const AxisRuns& runs, ApproachRuns TargetRuns::*side, int hue) {
  const bool up = hue == upHue;
  const std::string name = up ? Text::tr("mean, upward") : Text::tr("mean, downward");
  const std::string spread = up ? Text::tr("±2 s, upward") : Text::tr("±2 s, downward");
  // Bars of the two sides differ in width, so that one shows behind the other.
  const double width = spanOf(runs) * (up ? 0.012 : 0.007);
  Series line = series(name, SeriesRole::model, hue);
  std::vector<Series> whiskers;
  for (const auto& target : runs.targets) {
    const ApproachRuns& approach = target.*side;
    if (!approach.any()) {
      continue;
    }
    const double mean = approach.mean();
    line.x.push_back(target.target);
    line.y.push_back(mean);
    if (const auto s = approach.spread()) {
      whiskers.push_back(whisker(spread, hue, target.target, mean - 2 * *s, mean + 2 * *s, width));
    }
  }
  if (line.x.empty()) {
    return;
  }
  Series points = series({}, SeriesRole::measured, hue);
  points.x = line.x;
  points.y = line.y;
  chart.series.push_back(std::move(line));
  chart.series.push_back(std::move(points));
  chart.series.insert(chart.series.end(), whiskers.begin(), whiskers.end());
}

void addExcluded(Chart& chart, const AxisRuns& runs, const std::vector<AxisMove>& moves) {
  Series left = series(Text::tr("excluded"), SeriesRole::excluded, upHue);
  for (const auto& move : moves) {
    if (move.excluded && move.axis == runs.axis && move.target && move.measured) {
      left.x.push_back(*move.target);
      left.y.push_back(*move.measured - *move.target);
    }
  }
  if (!left.x.empty()) {
    chart.series.push_back(std::move(left));
  }
}

Chart emptyChart(const std::string& axis) {
  Chart chart;
  chart.id = axis.empty() ? "deviations" : axis + "-deviations";
  chart.title = axis.empty() ? Text::tr("Deviations") : say(Text::tr("Deviations {0}"), axis);
  chart.x = {Text::tr("target position"), "mm"};
  chart.y = {Text::tr("deviation, measured − target"), "mm"};
  chart.whenEmpty =
      Text::tr("Enter moves to five targets or more, each approached from both sides five times.");
  return chart;
}

Chart deviationChart(const AxisRuns& runs, const std::vector<AxisMove>& moves) {
  Chart chart = emptyChart(runs.axis);
  addSide(chart, runs, &TargetRuns::up, upHue);
  addSide(chart, runs, &TargetRuns::down, downHue);
  addExcluded(chart, runs, moves);
  return chart;
}

Chart reversalChart(const AxisRuns& runs, const Instrument& instrument) {
  Chart chart;
  chart.id = runs.axis + "-reversal";
  chart.title = say(Text::tr("Reversal {0}"), runs.axis);
  chart.x = {Text::tr("target position"), "mm"};
  chart.y = {Text::tr("reversal, upward − downward"), "mm"};
  chart.whenEmpty = Text::tr("Approach targets from both sides to see the reversal.");
  Series points = series(Text::tr("reversal"), SeriesRole::measured, upHue);
  std::vector<double> expanded;
  for (const auto& target : runs.targets) {
    if (target.bothSides()) {
      const Quantity reversal = target.reversal(instrument);
      points.x.push_back(target.target);
      points.y.push_back(reversal.value);
      expanded.push_back(expandedUncertainty(reversal).value_or(0));
    }
  }
  if (!points.x.empty()) {
    addWithUncertainty(chart, std::move(points), expanded);
    chart.lines.push_back({Text::tr("none"), 0, false});
  }
  return chart;
}

}  // namespace

std::vector<Chart> axisTravelCharts(const std::vector<AxisRuns>& axes, const std::vector<AxisMove>& moves,
                                    const Instrument& instrument) {
  std::vector<Chart> charts;
  for (const auto& runs : axes) {
    charts.push_back(deviationChart(runs, moves));
    charts.push_back(reversalChart(runs, instrument));
  }
  if (charts.empty()) {
    charts.push_back(emptyChart({}));
  }
  return charts;
}

}  // namespace fettle
