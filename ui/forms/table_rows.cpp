#include "ui/forms/table_rows.h"

#include <algorithm>

#include "core/intake/text_lines.h"
#include "ui/forms/field_value.h"
#include "ui/forms/form_words.h"

namespace fettle::ui {
namespace {

void trim(Json& rows) {
  while (!rows.empty() && isBlankRow(rows.back())) {
    rows.erase(rows.size() - 1);
  }
}

Json& rowAt(Json& rows, int row) {
  while (rows.size() <= static_cast<std::size_t>(row)) {
    rows.push_back(Json::object());
  }
  return rows[static_cast<std::size_t>(row)];
}

void put(Json& row, const std::string& key, const Json& value) {
  if (isBlank(value)) {
    row.erase(key);
  } else {
    row[key] = value;
  }
}

/// "row 3", "rows 3, 5": for one edit of several rows.
QString rowWords(const std::set<int>& which) {
  QStringList numbers;
  for (const int row : which) {
    numbers << QString::number(row + 1);
  }
  return which.size() == 1 ? FormWords::tr("row %1").arg(numbers.front())
                           : FormWords::tr("rows %1").arg(numbers.join(", "));
}

QStringList splitLine(const QString& line, Delimiter delimiter) {
  const auto cells = splitCells(line.toStdString(), delimiter);
  if (!cells) {
    return line.split(QLatin1Char(delimiterCharacter(delimiter)));
  }
  QStringList words;
  for (const auto& cell : *cells) {
    words << QString::fromStdString(cell);
  }
  return words;
}

}  // namespace

Json rowsOf(const Json& value) {
  Json rows = Json::array();
  if (value.is_array()) {
    rows = value;
  } else if (value.is_object() && !value.contains("file")) {
    rows.push_back(value);
  }
  for (Json& row : rows) {
    if (!row.is_object()) {
      row = Json::object();
    }
  }
  trim(rows);
  return rows;
}

bool isBlankRow(const Json& row) {
  return std::all_of(row.begin(), row.end(), [](const Json& c) { return isBlank(c); });
}

QString exclusionOf(const Json& row) {
  const Json& reason = memberOf(row, excludedKey);
  return reason.is_string() ? QString::fromStdString(reason.get<std::string>()) : QString();
}

TableChange withCell(const Json& rows, int row, const Field& column, const Json& value) {
  Json changed = rows;
  put(rowAt(changed, row), column.key, value);
  trim(changed);
  return {changed, FormWords::tr("row %1, %2").arg(row + 1).arg(QString::fromStdString(column.label))};
}

TableChange withoutCells(const Json& rows, const std::vector<std::pair<int, std::string>>& cells) {
  Json changed = rows;
  std::set<int> touched;
  for (const auto& [row, key] : cells) {
    if (row < static_cast<int>(rows.size())) {
      changed[static_cast<std::size_t>(row)].erase(key);
      touched.insert(row);
    }
  }
  trim(changed);
  return {changed, FormWords::tr("clear cells in %1").arg(rowWords(touched))};
}

TableChange withRowInserted(const Json& rows, int at) {
  Json changed = rows;
  if (at < static_cast<int>(rows.size())) {
    changed.insert(changed.begin() + at, Json::object());
  }
  return {changed, FormWords::tr("insert row %1").arg(at + 1)};
}

TableChange withoutRows(const Json& rows, const std::set<int>& which) {
  Json kept = Json::array();
  for (int row = 0; row < static_cast<int>(rows.size()); ++row) {
    if (which.count(row) == 0) {
      kept.push_back(rows[static_cast<std::size_t>(row)]);
    }
  }
  trim(kept);
  return {kept, FormWords::tr("remove %1").arg(rowWords(which))};
}

TableChange withExclusion(const Json& rows, const std::set<int>& which, const QString& reason) {
  Json changed = rows;
  for (const int row : which) {
    if (row < static_cast<int>(rows.size()) && !isBlankRow(rows[static_cast<std::size_t>(row)])) {
      put(changed[static_cast<std::size_t>(row)], excludedKey, reason.trimmed().toStdString());
    }
  }
  const QString what = reason.isEmpty() ? FormWords::tr("include %1") : FormWords::tr("exclude %1");
  return {changed, what.arg(rowWords(which))};
}

ClipboardCells cellsFromText(const QString& text) {
  QString lines = text;
  lines.replace(QStringLiteral("\r\n"), QStringLiteral("\n")).replace('\r', '\n');
  while (lines.endsWith('\n')) {
    lines.chop(1);
  }
  const Delimiter delimiter = lines.contains('\t') ? Delimiter::tab : Delimiter::semicolon;
  ClipboardCells cells;
  for (const QString& line : lines.split('\n')) {
    cells.push_back(splitLine(line, delimiter));
  }
  return cells;
}

QString textFromCells(const ClipboardCells& cells) {
  QStringList lines;
  for (const auto& line : cells) {
    lines << line.join('\t');
  }
  return lines.join('\n');
}

tl::expected<TableChange, QString> withCellsPasted(const Json& rows, int row,
                                                   const std::vector<const Field*>& columns,
                                                   const ClipboardCells& cells) {
  Json changed = rows;
  for (std::size_t r = 0; r < cells.size(); ++r) {
    const int target = row + static_cast<int>(r);
    if (cells[r].size() > static_cast<qsizetype>(columns.size())) {
      return tl::unexpected(
          FormWords::tr(
              "Nothing was pasted: row %1 brings %2 cells, but from here there are only %3 columns.")
              .arg(target + 1)
              .arg(cells[r].size())
              .arg(columns.size()));
    }
    for (qsizetype c = 0; c < cells[r].size(); ++c) {
      const Field& column = *columns[static_cast<std::size_t>(c)];
      const auto value = valueFromText(column, cells[r][c]);
      if (!value) {
        return tl::unexpected(
            FormWords::tr("Nothing was pasted: row %1, %2").arg(target + 1).arg(value.error()));
      }
      put(rowAt(changed, target), column.key, *value);
    }
  }
  trim(changed);
  std::set<int> touched;
  for (std::size_t r = 0; r < cells.size(); ++r) {
    touched.insert(row + static_cast<int>(r));
  }
  const int last = *touched.rbegin() + 1;
  return TableChange{changed, touched.size() == 1
                                  ? FormWords::tr("paste into row %1").arg(last)
                                  : FormWords::tr("paste into rows %1 to %2").arg(row + 1).arg(last)};
}

}  // namespace fettle::ui
