#include "core/steps/axis_travel/charts.h"

#include <algorithm>
#include <limits>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/axis_travel/accuracy.h"

namespace fettle {
namespace {

constexpr int upHue = 0, downHue = 1, middleHue = 2, spanHue = 3;

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
  const std::string name = up ? Text::tr("mean, towards plus") : Text::tr("mean, towards minus");
  const std::string spread = up ? Text::tr("±2 s, towards plus") : Text::tr("±2 s, towards minus");
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

/// The mean of both directions, of which M is the range.
void addMiddle(Chart& chart, const AxisRuns& runs) {
  Series line = series(Text::tr("mean of both directions"), SeriesRole::comparison, middleHue);
  for (const auto& target : runs.targets) {
    if (target.bothSides()) {
      line.x.push_back(target.target);
      line.y.push_back((target.up.mean() + target.down.mean()) / 2);
    }
  }
  if (!line.x.empty()) {
    chart.series.push_back(std::move(line));
  }
}

void addSpan(Chart& chart, const char* letter, const Extent& extent, double x, double halfWidth) {
  chart.series.push_back(
      whisker(say(Text::tr("{0} {1} mm"), letter, formatFixed(extent.high - extent.low, 3)), spanHue, x,
              extent.low, extent.high, halfWidth));
}

/// A, E and M as dimensions beside the last target, B at the target where it is greatest.
void addSpans(Chart& chart, const AxisRuns& runs) {
  // Of the travel: room for the dimensions beside the last target.
  const double step = 0.04 * spanOf(runs), halfWidth = 0.25 * step, last = runs.targets.back().target;
  std::optional<Extent> reversal;
  double reversalAt = 0;
  for (const auto& target : runs.targets) {
    if (target.bothSides()) {
      const auto [low, high] = std::minmax({target.up.mean(), target.down.mean()});
      if (!reversal || high - low > reversal->high - reversal->low) {
        reversal = Extent{low, high};
        reversalAt = target.target;
      }
    }
  }
  if (reversal) {
    addSpan(chart, "B", *reversal, reversalAt + step / 2, halfWidth);
  }
  if (const auto middles = extentOfMiddles(runs)) {
    addSpan(chart, "M", *middles, last + step, halfWidth);
  }
  addSpan(chart, "E", extentOfMeans(runs, 0), last + 2 * step, halfWidth);
  if (runs.fewestRuns() > 1) {
    addSpan(chart, "A", extentOfMeans(runs, 2), last + 3 * step, halfWidth);
  }
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
  chart.view = "deviations";
  chart.about = axis;
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
  addMiddle(chart, runs);
  addSpans(chart, runs);
  addExcluded(chart, runs, moves);
  return chart;
}

Chart reversalChart(const AxisRuns& runs, const Instrument& instrument) {
  Chart chart;
  chart.view = "reversal";
  chart.about = runs.axis;
  chart.title = say(Text::tr("Reversal {0}"), runs.axis);
  chart.x = {Text::tr("target position"), "mm"};
  chart.y = {Text::tr("reversal, towards plus − towards minus"), "mm"};
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
