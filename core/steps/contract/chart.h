#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/measure/json.h"

namespace fettle {

/// A quantity along one side of a chart.
struct Axis {
  std::string label;
  std::string unit;  ///< unit key
  bool logarithmic = false;
  bool whole = false;                   ///< counts things: marked at whole numbers only
  std::vector<std::string> names = {};  ///< what the things 1, 2, 3 … are called; empty: by their number

  void nameThing(std::size_t number, const std::string& name);

  friend bool operator==(const Axis&, const Axis&) = default;
};

/// An axis that counts things.
Axis countedAxis(std::string label);

/// What a series means decides how it is drawn; colours and marks are the drawer's business.
enum class SeriesRole {
  measured,    ///< hollow points
  excluded,    ///< points left out by the user
  model,       ///< a line
  trace,       ///< a measured curve: a thin line
  comparison,  ///< a line of something else to compare with: dashed
  band,        ///< area between y and yHigh
  outline,     ///< closed line through the points, of a bed or a travel range
  planned,     ///< points where something was meant to be
  reached,     ///< points where something really is
  fault        ///< points that are wrong: crossed
};

struct Series {
  std::string name;
  SeriesRole role = SeriesRole::measured;
  std::vector<double> x, y;
  std::vector<double> yHigh;  ///< only of a band
  int hue = 0;                ///< series of one hue belong together

  friend bool operator==(const Series&, const Series&) = default;
};

/// A labelled line across the whole chart.
struct LimitLine {
  std::string label;
  double at = 0;
  bool vertical = false;

  friend bool operator==(const LimitLine&, const LimitLine&) = default;
};

/// A shaded interval of x (vertical) or y.
struct IntervalBand {
  std::string label;
  double from = 0, to = 0;
  bool vertical = true;

  friend bool operator==(const IntervalBand&, const IntervalBand&) = default;
};

/// A second axis on top that shows factor·x.
struct TopAxis {
  Axis axis;
  double factor = 1;

  friend bool operator==(const TopAxis&, const TopAxis&) = default;
};

enum class ChartKind {
  curve,          ///< series over x
  bedPlan,        ///< series in bed coordinates, both axes to the same scale
  heightMap,      ///< z over x and y, with series on top
  timeFrequency,  ///< density over time (x) and frequency (y)
};

/// Values over a net: z[row of y][column of x].
struct Surface {
  Axis axis;
  std::vector<double> x, y;
  std::vector<std::vector<double>> z;
  bool difference = false;  ///< signed about zero: drawn with a diverging map

  friend bool operator==(const Surface&, const Surface&) = default;
};

/// One chart as plain data. Screens and the report draw the same value; a chart is never read back.
struct Chart {
  ChartKind kind = ChartKind::curve;
  std::string view;   ///< stable word within the step for what is drawn: "plan", "map"
  std::string about;  ///< which axis, heater or capture it draws, as people say it; empty: all there is
  std::string title;
  Axis x, y;
  std::vector<Series> series;
  std::vector<LimitLine> lines;
  std::vector<IntervalBand> bands;
  std::optional<TopAxis> top;
  std::optional<Surface> surface;
  std::string whenEmpty;  ///< what to enter, while there is nothing to draw

  bool isEmpty() const;

  friend bool operator==(const Chart&, const Chart&) = default;
};

/// A bar from low to high at x with an end of this half width across it, in one stroke.
Series whisker(std::string name, int hue, double x, double low, double high, double halfWidth);

/// Adds points, and at each a bar of ±U; `expanded` holds U point by point, 0 where it is not known.
void addWithUncertainty(Chart& chart, Series points, const std::vector<double>& expanded);

std::string chartKindKey(ChartKind kind);
std::string seriesRoleKey(SeriesRole role);

/// Lossless both ways.
Json toJson(const Chart& chart);
Chart chartFromJson(const Json& json);

/// Map of later - earlier where both have the same net (lines within 0.01 mm); none otherwise.
std::optional<Chart> differenceOf(const Chart& later, const Chart& earlier, const std::string& title);

/// The series of a chart as a table, one column per x and y: for CSV export.
std::string chartAsCsv(const Chart& chart);

}  // namespace fettle
