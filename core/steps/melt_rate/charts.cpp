#include "core/steps/melt_rate/charts.h"

#include <algorithm>
#include <map>

#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr double fall = 0.05;

Series points(std::string name, SeriesRole role, const std::vector<double>& x,
              const std::vector<double>& y) {
  Series series;
  series.name = std::move(name);
  series.role = role;
  series.x = x;
  series.y = y;
  return series;
}

void addLimits(Chart& chart, const MeltPicture& picture, bool vertical) {
  if (picture.limit) {
    chart.lines.push_back(
        {say(Text::tr("limit {0} mm³/s"), formatFixed(*picture.limit, 1)), *picture.limit, vertical});
  }
  if (picture.safe) {
    chart.lines.push_back(
        {say(Text::tr("safe {0} mm³/s"), formatFixed(*picture.safe, 1)), *picture.safe, vertical});
  }
}

void addModel(Chart& chart, const maths::Hinge& hinge, const std::vector<double>& flow) {
  const auto [lowest, highest] = std::minmax_element(flow.begin(), flow.end());
  chart.series.push_back(points(Text::tr("plateau and falling line"), SeriesRole::model,
                                {*lowest, hinge.hinge, *highest},
                                {hinge.plateau, hinge.plateau, hinge.at(*highest)}));
  if (hinge.hingeInterval) {
    chart.bands.push_back(
        {Text::tr("hinge, 95 %"), hinge.hingeInterval->low, hinge.hingeInterval->high, true});
  }
  chart.lines.push_back({Text::tr("5 % below the plateau"), (1 - fall) * hinge.plateau, false});
}

Chart deliveredChart(const MeltPicture& picture) {
  Chart chart;
  chart.view = "delivered";
  chart.title = Text::tr("Delivered against flow");
  chart.x = {Text::tr("flow"), "mm3/s"};
  chart.y = {Text::tr("delivered / commanded"), "1"};
  chart.whenEmpty =
      Text::tr("Enter steps of flow with the mass that came out, or with the part delivered.");
  const DeliveredSteps& steps = picture.steps;
  if (!steps.flow.empty()) {
    chart.series.push_back(points(Text::tr("measured"), SeriesRole::measured, steps.flow, steps.delivered));
  }
  if (!steps.excludedFlow.empty()) {
    chart.series.push_back(
        points(Text::tr("excluded"), SeriesRole::excluded, steps.excludedFlow, steps.excludedDelivered));
  }
  if (picture.hinge) {
    addModel(chart, *picture.hinge, steps.flow);
    addLimits(chart, picture, true);
  }
  if (!picture.sizes.empty()) {
    const LineSize& size = picture.sizes.front();
    chart.top = TopAxis{{say(Text::tr("print speed at {0} × {1} mm"), formatNumber(*size.height),
                             formatNumber(*size.width)),
                         "mm/s"},
                        1 / size.area()};
  }
  return chart;
}

/// The flow over the height of a piece, stair by stair where it has stairs.
Series flowOf(const GradedPiece& piece) {
  Series flow = points(Text::tr("flow of the piece"), SeriesRole::model, {}, {});
  const auto count = static_cast<int>(piece.stairs.value_or(1));
  for (int stair = 0; stair < count; ++stair) {
    for (const int edge : {stair, stair + 1}) {
      const double height = *piece.height * edge / count;
      flow.x.push_back(height);
      flow.y.push_back(piece.stairs ? piece.valueOfStair(stair) : piece.valueAt(height));
    }
  }
  return flow;
}

Chart gradedChart(const MeltPicture& picture) {
  const GradedLimit& graded = *picture.graded;
  Chart chart;
  chart.view = "graded";
  chart.title = Text::tr("Flow over height");
  chart.x = {Text::tr("height"), "mm"};
  chart.y = {Text::tr("flow"), "mm3/s"};
  chart.whenEmpty = Text::tr("Enter the graded piece and the height at which it turns bad.");
  for (const auto& height : graded.heights) {
    chart.bands.push_back({Text::tr("turns bad"), *height.lastGood, *height.badHeight, true});
  }
  chart.series.push_back(flowOf(graded.piece));
  addLimits(chart, picture, false);
  return chart;
}

/// Safe speed over layer height for one width, about the heights that are used.
Series speedCurve(double width, double lowest, double highest, double flow) {
  constexpr int steps = 40;
  Series curve;
  curve.name = say(Text::tr("{0} mm wide"), formatNumber(width));
  curve.role = SeriesRole::model;
  for (int i = 0; i <= steps; ++i) {
    LineSize size;
    size.width = width;
    size.height = lowest + (highest - lowest) * i / steps;
    curve.x.push_back(*size.height);
    curve.y.push_back(flow / size.area());
  }
  return curve;
}

Chart speedChart(const MeltPicture& picture) {
  Chart chart;
  chart.view = "speeds";
  chart.title = Text::tr("Speeds for line sizes");
  chart.x = {Text::tr("layer height"), "mm"};
  chart.y = {Text::tr("speed at the safe flow"), "mm/s"};
  chart.whenEmpty = Text::tr("Enter line sizes, and steps that give a safe flow, to see their speeds.");
  std::map<double, std::vector<double>> heightsOfWidth;
  for (const auto& size : picture.sizes) {
    heightsOfWidth[*size.width].push_back(*size.height);
  }
  int hue = 0;
  for (auto found = heightsOfWidth.begin(); picture.safe && found != heightsOfWidth.end(); ++found) {
    const auto& [width, heights] = *found;
    const auto [least, greatest] = std::minmax_element(heights.begin(), heights.end());
    chart.series.push_back(
        speedCurve(width, 0.5 * *least, std::min(1.5 * *greatest, width), *picture.safe));
    chart.series.back().hue = hue;
    Series chosen = points(Text::tr("chosen"), SeriesRole::reached, heights, {});
    for (const double height : heights) {
      LineSize size;
      size.width = width;
      size.height = height;
      chosen.y.push_back(*picture.safe / size.area());
    }
    chosen.hue = hue++;
    chart.series.push_back(std::move(chosen));
  }
  return chart;
}

}  // namespace

std::vector<Chart> meltRateCharts(const MeltPicture& picture) {
  return {picture.graded ? gradedChart(picture) : deliveredChart(picture), speedChart(picture)};
}

}  // namespace fettle
