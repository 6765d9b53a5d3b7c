#include <algorithm>
#include <functional>
#include <limits>

#include "core/fields/field_reader.h"
#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

/// Rising copies of a net whose lines were given in either order; false when lines repeat or cross.
bool sortAxis(std::vector<double>& axis, Eigen::MatrixXd& z, bool columns) {
  if (axis.size() > 1 && axis.front() > axis.back()) {
    std::reverse(axis.begin(), axis.end());
    if (columns) {
      z = z.rowwise().reverse().eval();
    } else {
      z = z.colwise().reverse().eval();
    }
  }
  return std::adjacent_find(axis.begin(), axis.end(), std::greater_equal<>()) == axis.end();
}

bool isNet(const Json& net) {
  return net.is_object() && net.contains("x") && net.contains("y") && net.contains("z") &&
         isNumberList(net["x"]) && isNumberList(net["y"]) && net["z"].is_array();
}

/// What keeps a cell, counted from 1, from being a height; a blank one is none yet.
std::optional<std::string> problemOfHeight(const Field& field, const Json& cell, std::size_t row,
                                           std::size_t column) {
  const AcceptedNumbers heights = numbersOf(field);
  std::string sentence;
  if (!cell.is_number() && !isBlankValue(cell)) {
    sentence = heights.notANumber(cell.dump());
  } else if (cell.is_number() && !heights.has(cell.get<double>())) {
    sentence = heights.notPossible(formatNumber(cell.get<double>()));
  } else {
    return std::nullopt;
  }
  return say(Text::tr("row {0}, column {1}: {2}"), row, column, sentence);
}

/// What keeps the rows of a net from being one row of heights for each y.
std::optional<std::string> problemOfShape(const Json& rows, std::size_t columns, std::size_t lines) {
  if (rows.size() != lines) {
    return say(Text::tr("{0} rows of heights do not fit {1} values of y; one row for each y is needed."),
               rows.size(), lines);
  }
  for (std::size_t j = 0; j < lines; ++j) {
    if (!rows[j].is_array() || rows[j].size() != columns) {
      return say(Text::tr("row {0} does not have the {1} heights that x asks for."), j + 1, columns);
    }
  }
  return std::nullopt;
}

}  // namespace

GridReadings FieldReader::grid(const Field& field, const Json& value) {
  if (isBlankValue(value)) {
    return {};
  }
  const auto net = opened(field, value, &InputFiles::grid);
  if (!net) {
    return {};
  }
  if (!isNet(*net)) {
    refuse(field, Text::tr("a grid needs x and y as lists of numbers and z with one row for each y."));
    return {};
  }
  GridReadings grid;
  grid.x = (*net)["x"].get<std::vector<double>>();
  grid.y = (*net)["y"].get<std::vector<double>>();
  const Json& rows = (*net)["z"];
  if (const auto problem = problemOfShape(rows, grid.x.size(), grid.y.size())) {
    refuse(field, *problem);
    return {};
  }
  grid.z.resize(static_cast<Eigen::Index>(grid.y.size()), static_cast<Eigen::Index>(grid.x.size()));
  for (std::size_t j = 0; j < grid.y.size(); ++j) {
    for (std::size_t i = 0; i < grid.x.size(); ++i) {
      const Json& cell = rows[j][i];
      const auto problem = problemOfHeight(field, cell, j + 1, i + 1);
      if (problem) {
        refuseAt(fmt::format("{}.z[{}][{}]", field.key, j + 1, i + 1), field, *problem);
      }
      grid.z(static_cast<Eigen::Index>(j), static_cast<Eigen::Index>(i)) =
          cell.is_number() && !problem ? cell.get<double>() : std::numeric_limits<double>::quiet_NaN();
    }
  }
  if (!sortAxis(grid.x, grid.z, true) || !sortAxis(grid.y, grid.z, false)) {
    refuse(field, Text::tr("the lines of x and of y must rise (or fall) without a repeat."));
    return {};
  }
  return grid;
}

}  // namespace fettle
