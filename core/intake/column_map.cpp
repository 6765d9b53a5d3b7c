#include "core/intake/column_map.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/intake/detect_format.h"
#include "core/intake/table_head.h"
#include "core/intake/text_encoding.h"

namespace fettle {
namespace {

using Heads = std::vector<ColumnHead>;
using Wanted = std::vector<WantedColumn>;

/// Converts in place. A number that overflows is refused, never turned into infinity.
std::optional<IntakeError> convertAll(std::vector<double>& values, const Unit& from, const Unit& to,
                                      const TextColumn& source, std::size_t column, const RowLines& lines) {
  if (from.key == to.key) {
    return std::nullopt;
  }
  for (std::size_t row = 0; row < values.size(); ++row) {
    values[row] = convert(values[row], from, to);
    if (!std::isfinite(values[row])) {
      return refusal::tooLarge({lines.lineOf(row), column + 1, source.header}).value();
    }
  }
  return std::nullopt;
}

}  // namespace

const KeyedColumns::Column* KeyedColumns::find(std::string_view key) const {
  const auto found =
      std::find_if(columns.begin(), columns.end(), [&](const auto& column) { return column.key == key; });
  return found == columns.end() ? nullptr : &*found;
}

std::vector<ColumnHead> columnHeads(const TextTable& table) {
  Heads heads;
  for (const auto& column : table.columns) {
    heads.push_back({column.header, column.unit, column.kind});
  }
  return heads;
}

Intake<std::vector<ColumnHead>> readColumnHeads(std::string_view bytes, const TextFormat& format) {
  const auto text = PlainText::from(bytes);
  if (!text) {
    return tl::unexpected(text.error());
  }
  auto head = readHead(text->view(), format);
  if (!head) {
    return tl::unexpected(head.error());
  }
  Heads heads;
  for (std::size_t c = 0; c < format.columns.size(); ++c) {
    heads.push_back({std::move(head->headers[c]), std::move(head->units[c]), format.columns[c]});
  }
  return heads;
}

Intake<KeyedColumns> mapColumns(TextTable table, const Wanted& wanted, const ColumnChoice& choice) {
  const auto matches = matchColumns(columnHeads(table), wanted, choice);
  if (!matches) {
    return tl::unexpected(matches.error());
  }
  KeyedColumns out;
  for (const auto& match : *matches) {
    const auto& goal =
        *std::find_if(wanted.begin(), wanted.end(), [&](const auto& w) { return w.key == match.key; });
    auto& source = table.columns[match.column];
    const bool empty = std::all_of(source.words.begin(), source.words.end(),
                                   [](const std::string& word) { return word.empty(); });
    if (source.kind == ColumnKind::words && !goal.words && !goal.required && empty) {
      continue;  // a header without cells
    }
    KeyedColumns::Column column{match.key, match.column, std::move(source.values), std::move(source.words),
                                std::move(source.blankRows)};
    if (goal.words) {
      for (const double value : column.values) {
        column.words.push_back(fmt::format("{}", value));
      }
      column.values.clear();
    } else if (source.kind == ColumnKind::words) {
      const auto word = std::find_if(column.words.begin(), column.words.end(),
                                     [&](const std::string& cell) { return empty || !cell.empty(); });
      const auto row = static_cast<std::size_t>(word - column.words.begin());
      return refusal::columnOfWords(match.key, {table.lines.lineOf(row), match.column + 1, source.header},
                                    *word);
    }
    if (const auto dimension = goal.dimension()) {
      const auto from = unitFromText(match.unit, dimension);
      const auto to = unitFromText(goal.unit, dimension);
      if (auto error =
              convertAll(column.values, from.value(), to.value(), source, match.column, table.lines)) {
        return tl::unexpected(*std::move(error));
      }
      for (const auto row : column.blankRows) {
        column.values[row] = 0.0;
      }
    }
    out.columns.push_back(std::move(column));
  }
  out.lines = std::move(table.lines);
  return out;
}

Intake<KeyedColumns> readColumns(std::string_view bytes, const Wanted& wanted, const ColumnChoice& choice,
                                 const FormatHints& hints, const ReadOptions& options) {
  auto format = detectFormat(bytes, hints);
  if (!format) {
    return tl::unexpected(format.error());
  }
  auto heads = readColumnHeads(bytes, *format);
  if (!heads) {
    return tl::unexpected(heads.error());
  }
  for (const auto& match : suggestColumns(*heads, wanted, choice)) {
    const auto goal =
        std::find_if(wanted.begin(), wanted.end(), [&](const auto& w) { return w.key == match.key; });
    if (goal->words) {
      format->columns[match.column] = ColumnKind::words;
    }
  }
  auto table = readTable(bytes, *format, options);
  if (!table) {
    return tl::unexpected(table.error());
  }
  return mapColumns(*std::move(table), wanted, choice);
}

}  // namespace fettle
