#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/intake/column_match.h"
#include "core/intake/text_table.h"

namespace fettle {

/// Columns by key, in the units that were wanted.
struct KeyedColumns {
  struct Column {
    std::string key;
    std::size_t column = 0;  ///< of the table, from 0
    std::vector<double> values;
    std::vector<std::string> words;
    std::vector<std::size_t> blankRows;  ///< rows without a number (only where reading allowed that)
  };
  std::vector<Column>
      columns;  ///< in the order they were wanted; optional ones that were not found are left out
  RowLines lines;

  const Column* find(std::string_view key) const;
};

std::vector<ColumnHead> columnHeads(const TextTable& table);

/// The headers and units of a table without its rows.
Intake<std::vector<ColumnHead>> readColumnHeads(std::string_view bytes, const TextFormat& format);

/// Takes the wanted columns out of a table and converts them.
Intake<KeyedColumns> mapColumns(TextTable table, const std::vector<WantedColumn>& wanted,
                                const ColumnChoice& choice = {});

/// Detects the format, reads and maps in one go. Columns wanted as words are read as words.
Intake<KeyedColumns> readColumns(std::string_view bytes, const std::vector<WantedColumn>& wanted,
                                 const ColumnChoice& choice = {}, const FormatHints& hints = {},
                                 const ReadOptions& options = {});

}  // namespace fettle
