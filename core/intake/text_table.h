#pragma once
#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "core/intake/text_format.h"

namespace fettle {

/// Called now and then with the part that is done, 0..1; returning false stops the work.
using Progress = std::function<bool(double done)>;

/// Which line of the text each row of a table came from.
class RowLines {
 public:
  void append(std::size_t line);
  /// The line of a row (from 0), counted from 1; 0 when there is no such row.
  std::size_t lineOf(std::size_t row) const;
  std::size_t rows() const { return m_rows; }

 private:
  struct Run {
    std::size_t firstRow;
    std::size_t firstLine;
  };
  std::vector<Run> m_runs;  // rows on consecutive lines share one entry
  std::size_t m_rows = 0;
};

struct TextColumn {
  std::string header;  ///< as written
  std::string unit;    ///< of the units row, as written
  ColumnKind kind = ColumnKind::number;
  std::vector<double> values;          ///< of number and clock columns; clock times in s from the first row
  std::vector<std::string> words;      ///< of columns of words
  std::vector<std::size_t> blankRows;  ///< rows without a number, where that is allowed; their value is 0
};

/// A text table as numbers, column by column.
struct TextTable {
  std::vector<TextColumn> columns;
  RowLines lines;
  char decimalSign = '.';
  std::size_t rows() const { return lines.rows(); }
};

struct ReadOptions {
  bool blanksAllowed = false;  ///< an empty cell in a column of numbers is noted instead of refused
  Progress progress;
};

/// Reads all rows of a table in the given format. Empty lines, lines of empty cells and comment lines
/// between the rows are passed over; anything else that is not a full row of numbers, clock times and (in
/// columns of words) words is refused with its line and column. Needs the text and the columns, not more.
Intake<TextTable> readTable(std::string_view bytes, const TextFormat& format,
                            const ReadOptions& options = {});

}  // namespace fettle
