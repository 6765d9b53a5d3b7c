#include "ui/forms/grid_value.h"

#include <QRegularExpression>
#include <algorithm>

#include "core/intake/height_grid.h"
#include "core/measure/number_text.h"
#include "ui/forms/field_value.h"
#include "ui/forms/form_words.h"

namespace fettle::ui {
namespace {

using Row = std::vector<std::optional<double>>;

constexpr double mostLines = 500;  // along one edge of a bed

std::vector<double> numbersOf(const Json& list) {
  std::vector<double> numbers;
  if (list.is_array()) {
    for (const Json& value : list) {
      numbers.push_back(value.is_number() ? value.get<double>() : 0.0);
    }
  }
  return numbers;
}

void fitHeights(GridValue& grid) {
  grid.z.resize(grid.y.size());
  for (Row& row : grid.z) {
    row.resize(grid.x.size());
  }
}

void turnIfFalling(GridValue& grid) {
  if (grid.x.size() > 1 && grid.x.front() > grid.x.back()) {
    std::reverse(grid.x.begin(), grid.x.end());
    for (Row& row : grid.z) {
      std::reverse(row.begin(), row.end());
    }
  }
  if (grid.y.size() > 1 && grid.y.front() > grid.y.back()) {
    std::reverse(grid.y.begin(), grid.y.end());
    std::reverse(grid.z.begin(), grid.z.end());
  }
}

/// For each new position the index of the old line that stays there.
std::vector<std::optional<std::size_t>> keptLines(const std::vector<double>& before,
                                                  const std::vector<double>& after) {
  std::vector<std::optional<std::size_t>> kept(after.size());
  for (std::size_t i = 0; i < after.size(); ++i) {
    const auto same = std::find(before.begin(), before.end(), after[i]);
    if (before.size() == after.size()) {
      kept[i] = i;
    } else if (same != before.end()) {
      kept[i] = static_cast<std::size_t>(same - before.begin());
    }
  }
  return kept;
}

QStringList wordsOf(const QString& text) {
  static const QRegularExpression lists(QStringLiteral("[;\\s]+|,\\s+"));
  const QString trimmedText = text.trimmed();
  QStringList words = trimmedText.split(lists, Qt::SkipEmptyParts);
  if (words.size() == 1 && words.front().count(',') > 1) {
    words = words.front().split(',', Qt::SkipEmptyParts);
  }
  return words;
}

tl::expected<std::vector<double>, QString> rangeFrom(const QRegularExpressionMatch& match,
                                                     std::size_t count) {
  const auto first = numberFromKeyboard(match.captured(1).toStdString());
  const auto last = numberFromKeyboard(match.captured(2).toStdString());
  const auto given = numberFromText(match.captured(3).toStdString());
  if (!first || !last) {
    return tl::unexpected(QString::fromStdString(first ? last.error() : first.error()));
  }
  const double lines = given.value_or(static_cast<double>(count));
  if (lines < 2 || lines > mostLines) {
    return tl::unexpected(
        FormWords::tr("How many lines? Write the number behind a colon, as in 15..285: 6."));
  }
  return evenPositions(*first, *last, static_cast<std::size_t>(lines));
}

}  // namespace

GridValue GridValue::fromJson(const Json& value) {
  GridValue grid;
  if (!value.is_object()) {
    return grid;
  }
  grid.x = numbersOf(memberOf(value, "x"));
  grid.y = numbersOf(memberOf(value, "y"));
  const Json& rows = memberOf(value, "z");
  if (rows.is_array()) {
    for (const Json& row : rows) {
      Row& heights = grid.z.emplace_back();
      for (const Json& cell : row) {
        heights.push_back(cell.is_number() ? std::optional(cell.get<double>()) : std::nullopt);
      }
    }
  }
  fitHeights(grid);
  turnIfFalling(grid);
  return grid;
}

Json GridValue::toJson() const {
  if (isEmpty()) {
    return {};
  }
  Json rows = Json::array();
  for (const Row& row : z) {
    Json& cells = rows.emplace_back(Json::array());
    for (const auto& height : row) {
      cells.push_back(height ? Json(*height) : Json());
    }
  }
  return {{"x", x}, {"y", y}, {"z", rows}};
}

Field heightField(const Field& grid) {
  Field height = grid;
  height.kind = FieldKind::number;
  return height;
}

GridValue withPositions(const GridValue& grid, GridAxis axis, const std::vector<double>& positions) {
  GridValue changed = grid;
  const bool isX = axis == GridAxis::x;
  const auto kept = keptLines(isX ? grid.x : grid.y, positions);
  (isX ? changed.x : changed.y) = positions;
  changed.z.clear();
  fitHeights(changed);
  for (std::size_t j = 0; j < changed.y.size(); ++j) {
    for (std::size_t i = 0; i < changed.x.size(); ++i) {
      const auto line = kept[isX ? i : j];
      if (line) {
        changed.z[j][i] = isX ? grid.z[j][*line] : grid.z[*line][i];
      }
    }
  }
  return changed;
}

tl::expected<GridValue, QString> withHeightsPasted(const GridValue& grid, const Field& field, int row,
                                                   int column, const ClipboardCells& cells) {
  GridValue changed = grid;
  for (std::size_t r = 0; r < cells.size(); ++r) {
    for (qsizetype c = 0; c < cells[r].size(); ++c) {
      const auto line = static_cast<std::size_t>(row) + r;
      const auto at = static_cast<std::size_t>(column + c);
      if (line >= grid.y.size() || at >= grid.x.size()) {
        return tl::unexpected(
            FormWords::tr("Nothing was pasted: there are more cells than the grid has from here."));
      }
      const auto value = valueFromText(field, cells[r][c]);
      if (!value) {
        return tl::unexpected(FormWords::tr("Nothing was pasted: row %1, column %2, %3")
                                  .arg(line + 1)
                                  .arg(at + 1)
                                  .arg(value.error()));
      }
      changed.z[grid.y.size() - 1 - line][at] =
          value->is_number() ? std::optional(value->get<double>()) : std::nullopt;
    }
  }
  return changed;
}

tl::expected<Positions, QString> positionsFromText(const QString& text, std::size_t count) {
  static const QRegularExpression range(
      QStringLiteral("^\\s*(\\S+?)\\s*(?:\\.\\.+|\u2026)\\s*([^\\s:]+)\\s*(?::\\s*(\\d+))?\\s*$"));
  Positions positions;
  if (const auto match = range.match(text); match.hasMatch()) {
    const auto even = rangeFrom(match, count);
    if (!even) {
      return tl::unexpected(even.error());
    }
    positions.rising = *even;
  } else {
    for (const QString& word : wordsOf(text)) {
      const auto number = numberFromKeyboard(word.toStdString());
      if (!number) {
        return tl::unexpected(QString::fromStdString(number.error()));
      }
      positions.rising.push_back(*number);
    }
  }
  auto& list = positions.rising;
  positions.wereFalling = list.size() > 1 && list.front() > list.back();
  if (positions.wereFalling) {
    std::reverse(list.begin(), list.end());
  }
  const auto fault = std::adjacent_find(list.begin(), list.end(), std::greater_equal<>());
  if (fault != list.end()) {
    return tl::unexpected(FormWords::tr("The positions must rise or fall throughout; %1 and %2 do not.")
                              .arg(numberText(*fault), numberText(*(fault + 1))));
  }
  return positions;
}

QString positionsText(const std::vector<double>& positions) {
  QStringList words;
  for (const double position : positions) {
    words << numberText(position);
  }
  return words.join(QStringLiteral("  "));
}

}  // namespace fettle::ui
