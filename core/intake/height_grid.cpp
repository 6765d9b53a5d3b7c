#include "core/intake/height_grid.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <functional>

#include "core/intake/detect_format.h"
#include "core/intake/text_encoding.h"
#include "core/measure/number_text.h"

namespace fettle {
namespace {

using Matrix = std::vector<std::vector<double>>;

constexpr double kShortestAxis = 10.0;  // mm; no bed rises evenly by more
constexpr double kAxisToHeights = 4.0;

struct CellRow {
  std::size_t line = 0;
  std::vector<std::string> cells;
};

/// A range such as "x 15..285" or "y: 285 to 15" in a comment.
std::optional<GridText::Range> rangeOf(std::string_view comment, char axis, char decimalSign) {
  const auto isLetter = [&](std::size_t i) {
    return i < comment.size() && std::isalnum(static_cast<unsigned char>(comment[i])) != 0;
  };
  for (std::size_t i = 0; i < comment.size(); ++i) {
    const bool named = std::tolower(static_cast<unsigned char>(comment[i])) == axis && !isLetter(i + 1) &&
                       (i == 0 || !isLetter(i - 1));
    if (!named) {
      continue;
    }
    const auto begin = comment.find_first_not_of(" \t:=", i + 1);
    for (const std::string_view sign : {"..", "\u2026", "to"}) {
      const auto at = comment.find(sign, i + 1);
      if (begin == comment.npos || at == comment.npos || at < begin) {
        continue;
      }
      const auto first = numberFromText(comment.substr(begin, at - begin), decimalSign);
      const auto rest = trimmed(comment.substr(at + sign.size()));
      double last = 0.0;
      if (first && scanNumber(rest.data(), rest.data() + rest.size(), decimalSign, last) != nullptr) {
        return GridText::Range{*first, last};
      }
    }
  }
  return std::nullopt;
}

/// All rows from the first one that holds a number; words above it are a caption.
Intake<std::vector<CellRow>> cellRows(std::string_view text, const TextFormat& format, GridText& grid) {
  std::vector<CellRow> rows;
  LineReader lines(text);
  while (const auto line = lines.next()) {
    if (isComment(line->text, format.delimiter)) {
      const auto comment = withoutCommentMark(line->text);
      grid.x = grid.x ? grid.x : rangeOf(comment, 'x', format.decimalSign);
      grid.y = grid.y ? grid.y : rangeOf(comment, 'y', format.decimalSign);
      continue;
    }
    if (line->number <= format.skippedLines || isBlankLine(line->text, format.delimiter)) {
      continue;
    }
    auto cells = splitCells(line->text, format.delimiter);
    if (!cells) {
      return refusal::openQuote(line->number);
    }
    const bool anyNumber = std::any_of(cells->begin(), cells->end(), [&](const auto& cell) {
      return numberFromText(cell, format.decimalSign).has_value();
    });
    if (anyNumber || !rows.empty()) {
      rows.push_back({line->number, *std::move(cells)});
    }
  }
  // A delimiter at the end of every row leaves an empty cell behind.
  if (std::all_of(rows.begin(), rows.end(),
                  [](const auto& row) { return row.cells.size() > 1 && row.cells.back().empty(); })) {
    for (auto& row : rows) {
      row.cells.pop_back();
    }
  }
  return rows;
}

/// Gives the first row a corner of its own when positions stand above and left of the heights.
bool takeCorner(std::vector<CellRow>& rows, char decimalSign) {
  if (rows.size() < 2) {
    return false;
  }
  auto& first = rows.front().cells;
  const bool oneShort = first.size() + 1 == rows[1].cells.size();
  if (oneShort) {
    first.insert(first.begin(), std::string());
  }
  const bool corner = !numberFromText(first.front(), decimalSign) && first.size() > 1;
  if (corner) {
    first.front() = std::string(1, '0');
  }
  return corner;
}

Intake<Matrix> numbersOf(const std::vector<CellRow>& rows, char decimalSign) {
  Matrix out;
  for (const auto& row : rows) {
    if (row.cells.size() != rows.front().cells.size()) {
      return refusal::cellCount(row.line, row.cells.size(), rows.front().cells.size(), false);
    }
    out.emplace_back();
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
      const CellPlace place{row.line, c + 1, {}};
      if (row.cells[c].empty()) {
        return refusal::emptyCell(place);
      }
      const auto value = numberFromText(row.cells[c], decimalSign);
      if (!value) {
        return refusal::notANumber(place, row.cells[c], decimalSign);
      }
      out.back().push_back(*value);
    }
  }
  return out;
}

bool isMonotone(const std::vector<double>& values) {
  return std::adjacent_find(values.begin(), values.end(), std::greater_equal<>()) == values.end() ||
         std::adjacent_find(values.begin(), values.end(), std::less_equal<>()) == values.end();
}

Matrix transposed(const Matrix& rows) {
  Matrix out(rows.empty() ? 0 : rows.front().size());
  for (const auto& row : rows) {
    for (std::size_t c = 0; c < row.size(); ++c) {
      out[c].push_back(row[c]);
    }
  }
  return out;
}

/// Whether the first row runs like positions while the other rows stay as flat as a bed.
bool firstRowRunsLikePositions(const Matrix& rows, std::size_t firstColumn) {
  if (rows.size() < 3 || rows.front().size() < firstColumn + 2) {
    return false;
  }
  const auto from = static_cast<std::ptrdiff_t>(firstColumn);
  const std::vector<double> positions(rows.front().begin() + from, rows.front().end());
  double low = rows[1][firstColumn];
  double high = low;
  for (auto row = rows.begin() + 1; row != rows.end(); ++row) {
    const auto [least, most] = std::minmax_element(row->begin() + from, row->end());
    low = std::min(low, *least);
    high = std::max(high, *most);
  }
  const double span = std::abs(positions.back() - positions.front());
  return isMonotone(positions) && span > kShortestAxis && span > kAxisToHeights * (high - low);
}

/// Puts the positions in file order beside the rows, turning a rising list when the file runs the other
/// way.
Intake<std::vector<double>> positionsFor(char axis, std::vector<double> given,
                                         const std::vector<double>& inText,
                                         const std::optional<GridText::Range>& suggested, std::size_t count,
                                         const GridOptions& options) {
  const bool turned = axis == 'x' ? options.rightToLeft : options.backRowFirst;
  if (given.empty()) {
    given = !inText.empty()                     ? inText
            : options.useSuggested && suggested ? evenPositions(suggested->first, suggested->last, count)
                                                : std::vector<double>();
  }
  if (given.empty()) {
    return refusal::gridAxisMissing(axis, count);
  }
  if (given.size() != count) {
    return refusal::gridAxisLength(axis, given.size(), count);
  }
  if (!std::all_of(given.begin(), given.end(), [](double v) { return std::isfinite(v); })) {
    return refusal::gridAxisNotFinite(axis);
  }
  const bool rises = given.back() > given.front();
  for (std::size_t i = 1; i < count; ++i) {
    if (rises ? given[i] <= given[i - 1] : given[i] >= given[i - 1]) {
      return refusal::gridAxisOrder(axis, given[i - 1], given[i]);
    }
  }
  if (turned && rises && inText.empty()) {
    std::reverse(given.begin(), given.end());
  }
  return given;
}

}  // namespace

std::vector<double> evenPositions(double first, double last, std::size_t count) {
  std::vector<double> out;
  const double steps = count > 1 ? static_cast<double>(count - 1) : 1.0;
  for (std::size_t i = 0; i < count; ++i) {
    // Multiplied before it is divided, so that whole millimetres stay whole.
    out.push_back(i + 1 == count && i > 0 ? last : first + (last - first) * static_cast<double>(i) / steps);
  }
  return out;
}

Intake<GridText> readGridText(std::string_view bytes, const GridOptions& options) {
  const auto format = detectFormat(bytes, options.format);
  const auto text = PlainText::from(bytes);
  if (!format || !text) {
    return tl::unexpected(text ? format.error() : text.error());
  }
  GridText grid;
  auto rows = cellRows(text->view(), *format, grid);
  if (!rows) {
    return tl::unexpected(rows.error());
  }
  const bool corner = takeCorner(*rows, format->decimalSign);
  auto numbers = numbersOf(*rows, format->decimalSign);
  if (!numbers) {
    return tl::unexpected(numbers.error());
  }
  const bool top = options.firstRowIsPositions.value_or(corner || firstRowRunsLikePositions(*numbers, 0));
  const Matrix below(numbers->begin() + (top && !numbers->empty() ? 1 : 0), numbers->end());
  const bool left =
      options.firstColumnIsPositions.value_or(corner || firstRowRunsLikePositions(transposed(below), 0));
  const std::size_t skip = left ? 1 : 0;
  const auto behind = [&](const std::vector<double>& row) {
    return std::vector<double>(row.begin() + static_cast<std::ptrdiff_t>(std::min(skip, row.size())),
                               row.end());
  };
  if (top && !numbers->empty()) {
    grid.across = behind(numbers->front());
  }
  for (const auto& row : below) {
    if (left) {
      grid.down.push_back(row.front());
    }
    grid.rows.push_back(behind(row));
  }
  return grid;
}

Intake<HeightGrid> layOutGrid(GridText text, const GridOptions& options) {
  if (options.columnsFirst) {
    text.rows = transposed(text.rows);
    std::swap(text.across, text.down);
  }
  const std::size_t columns = text.rows.empty() ? 0 : text.rows.front().size();
  if (text.rows.size() < 2 || columns < 2) {
    return refusal::gridTooSmall(text.rows.size(), columns);
  }
  auto x = positionsFor('x', options.x, text.across, text.x, columns, options);
  if (!x) {
    return tl::unexpected(x.error());
  }
  auto y = positionsFor('y', options.y, text.down, text.y, text.rows.size(), options);
  if (!y) {
    return tl::unexpected(y.error());
  }
  HeightGrid grid{*std::move(x), *std::move(y), std::move(text.rows)};
  if (grid.y.front() > grid.y.back()) {
    std::reverse(grid.y.begin(), grid.y.end());
    std::reverse(grid.z.begin(), grid.z.end());
  }
  if (grid.x.front() > grid.x.back()) {
    std::reverse(grid.x.begin(), grid.x.end());
    for (auto& row : grid.z) {
      std::reverse(row.begin(), row.end());
    }
  }
  return grid;
}

Intake<HeightGrid> readGrid(std::string_view bytes, const GridOptions& options) {
  auto text = readGridText(bytes, options);
  return text ? layOutGrid(*std::move(text), options) : tl::unexpected(text.error());
}

}  // namespace fettle
