#include "core/steps/contract/chart.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr std::array<const char*, 4> kindKeys{"curve", "bed-plan", "height-map", "time-frequency"};
constexpr std::array<const char*, 10> roleKeys{"measured", "excluded", "model",   "trace",   "comparison",
                                               "band",     "outline",  "planned", "reached", "fault"};

template <std::size_t N>
int indexOf(const std::array<const char*, N>& keys, const std::string& key) {
  const auto found = std::find(keys.begin(), keys.end(), key);
  return found == keys.end() ? 0 : static_cast<int>(found - keys.begin());
}

Json toJson(const Axis& axis) {
  Json json{{"label", axis.label}, {"unit", axis.unit}, {"logarithmic", axis.logarithmic}};
  if (axis.whole) {
    json["whole"] = true;
    json["names"] = axis.names;
  }
  return json;
}

Axis axisFromJson(const Json& json) {
  return {json.at("label").get<std::string>(), json.at("unit").get<std::string>(),
          json.value("logarithmic", false), json.value("whole", false),
          json.value("names", std::vector<std::string>{})};
}

Json toJson(const Series& series) {
  Json json{{"name", series.name},
            {"role", seriesRoleKey(series.role)},
            {"hue", series.hue},
            {"x", series.x},
            {"y", series.y}};
  if (!series.yHigh.empty()) {
    json["y_high"] = series.yHigh;
  }
  return json;
}

Series seriesFromJson(const Json& json) {
  Series series;
  series.name = json.at("name").get<std::string>();
  series.role = static_cast<SeriesRole>(indexOf(roleKeys, json.value("role", "measured")));
  series.hue = json.value("hue", 0);
  series.x = json.at("x").get<std::vector<double>>();
  series.y = json.at("y").get<std::vector<double>>();
  series.yHigh = json.value("y_high", std::vector<double>{});
  return series;
}

/// Blank cells are NaN inside a surface and null in a file.
Json toJson(const std::vector<std::vector<double>>& rows) {
  Json json = Json::array();
  for (const auto& row : rows) {
    Json line = Json::array();
    for (const double value : row) {
      line.push_back(std::isfinite(value) ? Json(value) : Json());
    }
    json.push_back(std::move(line));
  }
  return json;
}

bool sameLines(const std::vector<double>& first, const std::vector<double>& second) {
  return std::equal(first.begin(), first.end(), second.begin(), second.end(),
                    [](double a, double b) { return std::abs(a - b) <= 0.01; });
}

std::string axisTitle(const Axis& axis) {
  return axis.unit.empty() || axis.unit == "1" ? axis.label : axis.label + " [" + axis.unit + "]";
}

std::string quoted(const std::string& text) {
  std::string cell(1, '"');
  for (const char c : text) {
    cell.append(c == '"' ? 2 : 1, c);
  }
  cell.push_back('"');
  return cell;
}

std::string surfaceAsCsv(const Chart& chart) {
  const Surface& surface = *chart.surface;
  std::string csv = fmt::format("{},{},{}\n", quoted(axisTitle(chart.x)), quoted(axisTitle(chart.y)),
                                quoted(axisTitle(surface.axis)));
  for (std::size_t j = 0; j < surface.y.size(); ++j) {
    for (std::size_t i = 0; i < surface.x.size(); ++i) {
      const double z = surface.z[j][i];
      csv += fmt::format("{},{},{}\n", surface.x[i], surface.y[j],
                         std::isfinite(z) ? fmt::format("{}", z) : "");
    }
  }
  return csv;
}

}  // namespace

void Axis::nameThing(std::size_t number, const std::string& name) {
  if (number > 0) {
    names.resize(std::max(names.size(), number));
    names[number - 1] = name;
  }
}

Axis countedAxis(std::string label) {
  return {std::move(label), "1", false, true, {}};
}

bool Chart::isEmpty() const {
  return !surface && std::all_of(series.begin(), series.end(), [](const Series& s) { return s.x.empty(); });
}

Series whisker(std::string name, int hue, double x, double low, double high, double halfWidth) {
  Series stroke;
  stroke.name = std::move(name);
  stroke.role = SeriesRole::trace;
  stroke.hue = hue;
  stroke.x = {x - halfWidth, x + halfWidth, x, x, x - halfWidth, x + halfWidth};
  stroke.y = {low, low, low, high, high, high};
  return stroke;
}

void addWithUncertainty(Chart& chart, Series points, const std::vector<double>& expanded) {
  const Series at = points;
  chart.series.push_back(std::move(points));
  if (at.x.empty()) {
    return;
  }
  const auto [low, high] = std::minmax_element(at.x.begin(), at.x.end());
  // Of the distance of counted things, or of the range of x: ends that are seen and clear of their
  // neighbours.
  constexpr double ofCounted = 0.06, ofRange = 0.007;
  const double halfWidth = chart.x.whole ? ofCounted : ofRange * (*high - *low);
  for (std::size_t i = 0; i < std::min(at.x.size(), expanded.size()); ++i) {
    if (expanded[i] > 0) {
      chart.series.push_back(whisker(Text::tr("±U"), at.hue, at.x[i], at.y[i] - expanded[i],
                                     at.y[i] + expanded[i], halfWidth));
    }
  }
}

std::string chartKindKey(ChartKind kind) {
  return kindKeys[static_cast<std::size_t>(kind)];
}

std::string seriesRoleKey(SeriesRole role) {
  return roleKeys[static_cast<std::size_t>(role)];
}

Json toJson(const Chart& chart) {
  Json json{{"kind", chartKindKey(chart.kind)},
            {"view", chart.view},
            {"about", chart.about},
            {"title", chart.title},
            {"axes", Json::array({toJson(chart.x), toJson(chart.y)})},
            {"series", Json::array()},
            {"lines", Json::array()},
            {"bands", Json::array()},
            {"when_empty", chart.whenEmpty}};
  for (const auto& series : chart.series) {
    json["series"].push_back(toJson(series));
  }
  for (const auto& line : chart.lines) {
    json["lines"].push_back({{"label", line.label}, {"at", line.at}, {"vertical", line.vertical}});
  }
  for (const auto& band : chart.bands) {
    json["bands"].push_back(
        {{"label", band.label}, {"from", band.from}, {"to", band.to}, {"vertical", band.vertical}});
  }
  if (chart.top) {
    json["top"] = {{"axis", toJson(chart.top->axis)}, {"factor", chart.top->factor}};
  }
  if (chart.surface) {
    json["axes"].push_back(toJson(chart.surface->axis));
    json["x"] = chart.surface->x;
    json["y"] = chart.surface->y;
    json["z"] = toJson(chart.surface->z);
    json["difference"] = chart.surface->difference;
  }
  return json;
}

Chart chartFromJson(const Json& json) {
  Chart chart;
  chart.kind = static_cast<ChartKind>(indexOf(kindKeys, json.at("kind").get<std::string>()));
  chart.view = json.value("view", "");
  chart.about = json.value("about", "");
  chart.title = json.at("title").get<std::string>();
  chart.x = axisFromJson(json.at("axes").at(0));
  chart.y = axisFromJson(json.at("axes").at(1));
  for (const auto& series : json.at("series")) {
    chart.series.push_back(seriesFromJson(series));
  }
  for (const auto& line : json.value("lines", Json::array())) {
    chart.lines.push_back({line.at("label").get<std::string>(), line.at("at").get<double>(),
                           line.at("vertical").get<bool>()});
  }
  for (const auto& band : json.value("bands", Json::array())) {
    chart.bands.push_back({band.at("label").get<std::string>(), band.at("from").get<double>(),
                           band.at("to").get<double>(), band.at("vertical").get<bool>()});
  }
  if (json.contains("top")) {
    chart.top = TopAxis{axisFromJson(json["top"].at("axis")), json["top"].at("factor").get<double>()};
  }
  if (json.contains("z")) {
    Surface surface;
    surface.axis = axisFromJson(json.at("axes").at(2));
    surface.x = json.at("x").get<std::vector<double>>();
    surface.y = json.at("y").get<std::vector<double>>();
    surface.difference = json.value("difference", false);
    for (const auto& row : json.at("z")) {
      auto& line = surface.z.emplace_back();
      for (const auto& value : row) {
        line.push_back(value.is_number() ? value.get<double>() : std::nan(""));
      }
    }
    chart.surface = std::move(surface);
  }
  chart.whenEmpty = json.value("when_empty", "");
  return chart;
}

std::optional<Chart> differenceOf(const Chart& later, const Chart& earlier, const std::string& title) {
  if (!later.surface || !earlier.surface || !sameLines(later.surface->x, earlier.surface->x) ||
      !sameLines(later.surface->y, earlier.surface->y)) {
    return std::nullopt;
  }
  Chart chart = later;
  chart.view = later.view + "-difference";
  chart.title = title;
  chart.series.clear();
  chart.surface->difference = true;
  for (std::size_t j = 0; j < chart.surface->z.size(); ++j) {
    for (std::size_t i = 0; i < chart.surface->z[j].size(); ++i) {
      chart.surface->z[j][i] -= earlier.surface->z[j][i];
    }
  }
  return chart;
}

std::string chartAsCsv(const Chart& chart) {
  if (chart.surface) {
    return surfaceAsCsv(chart);
  }
  std::string csv;
  std::size_t rows = 0;
  for (const auto& series : chart.series) {
    csv += fmt::format("{}{},{}", csv.empty() ? "" : ",", quoted(series.name + ": " + axisTitle(chart.x)),
                       quoted(series.name + ": " + axisTitle(chart.y)));
    csv += series.yHigh.empty() ? std::string()
                                : fmt::format(",{}", quoted(series.name + ": upper " + axisTitle(chart.y)));
    rows = std::max(rows, series.x.size());
  }
  csv += '\n';
  for (std::size_t row = 0; row < rows; ++row) {
    std::string line;
    for (const auto& series : chart.series) {
      const bool there = row < series.x.size();
      line += &series == &chart.series.front() ? "" : ",";
      line += there ? fmt::format("{},{}", series.x[row], series.y[row]) : ",";
      line += series.yHigh.empty() ? "" : there ? fmt::format(",{}", series.yHigh[row]) : ",";
    }
    csv += line + '\n';
  }
  return csv;
}

}  // namespace fettle
