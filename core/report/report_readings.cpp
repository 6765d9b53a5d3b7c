#include "core/report/report_readings.h"

#include <algorithm>
#include <numeric>
#include <vector>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"
#include "core/report/report_sources.h"
#include "core/report/report_words.h"

namespace fettle {
namespace {

bool isSingle(const Field& field) {
  return field.kind == FieldKind::number || field.kind == FieldKind::choice ||
         field.kind == FieldKind::text || field.kind == FieldKind::yesNo ||
         field.kind == FieldKind::capture;
}

/// A member of an object, or null.
Json member(const Json& object, const std::string& key) {
  return object.is_object() ? object.value(key, Json()) : Json();
}

std::string textMember(const Json& object, const std::string& key) {
  const Json value = member(object, key);
  return value.is_string() ? value.get<std::string>() : std::string();
}

KeyValues singleFields(const Step& step, const Json& inputs) {
  KeyValues facts;
  for (const auto& field : step.fields) {
    if (!isSingle(field) || !applies(field, inputs, step.fields)) {
      continue;
    }
    if (const Json value = member(inputs, field.key); !value.is_null()) {
      facts.pairs.emplace_back(field.label, withUnit(entryText(field, value), field.unit));
    } else if (!field.fallback.is_null()) {
      const std::string text = withUnit(entryText(field, field.fallback), field.unit);
      facts.pairs.emplace_back(field.label, say(Text::tr("{0} (default)"), text));
    }
  }
  return facts;
}

ReportTable rowsOf(const Field& field, const Json& rows) {
  ReportTable table;
  table.columns.push_back({"#", true});
  for (const auto& column : field.columns) {
    table.columns.push_back({headOf(column.label, column.unit), column.kind == FieldKind::number});
  }
  table.columns.push_back({Text::tr("Left out because"), false});
  std::size_t number = 0;
  for (const auto& given : rows) {
    const std::string reason = textMember(given, "excluded");
    ReportTable::Row row{{std::to_string(++number)}, !reason.empty()};
    for (const auto& column : field.columns) {
      row.cells.push_back(entryText(column, member(given, column.key)));
    }
    const bool blank = std::all_of(row.cells.begin() + 1, row.cells.end(),
                                   [](const std::string& cell) { return cell.empty(); });
    row.cells.push_back(reason);
    if (!blank) {
      table.rows.push_back(std::move(row));
    }
  }
  dropEmptyColumns(table);
  return table;
}

ReportTable checklistOf(const Field& field, const Json& lines) {
  ReportTable table;
  table.columns = {{Text::tr("Item"), false},
                   {Text::tr("In order"), false},
                   {Text::tr("Remark"), false},
                   {Text::tr("Initials"), false},
                   {Text::tr("Time"), false}};
  for (const auto& line : lines) {
    const Json item = line.is_object() ? member(line, "item") : line;
    const Json ok = member(line, "ok");
    const std::string answer = !ok.is_boolean() ? Text::tr("– open")
                               : ok.get<bool>() ? Text::tr("✓ yes")
                                                : Text::tr("✕ no");
    table.rows.push_back({{entryText(field, item), answer, textMember(line, "remark"),
                           textMember(line, "initials"), textMember(line, "time")},
                          false});
  }
  dropEmptyColumns(table);
  return table;
}

/// The places of a list of numbers in rising order; nothing when it is no such list.
std::vector<std::size_t> risingOrder(const Json& numbers) {
  const auto isNumber = [](const Json& value) { return value.is_number(); };
  if (!numbers.is_array() || !std::all_of(numbers.begin(), numbers.end(), isNumber)) {
    return {};
  }
  std::vector<std::size_t> order(numbers.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return numbers[a].get<double>() < numbers[b].get<double>();
  });
  return order;
}

/// The back row on top, as the bed lies in front of you. Without rows when it is not a grid.
ReportTable gridOf(const Field& field, const Json& grid) {
  const Json xs = member(grid, "x"), ys = member(grid, "y"), z = member(grid, "z");
  const auto columns = risingOrder(xs), rows = risingOrder(ys);
  ReportTable table;
  if (columns.empty() || rows.empty() || !z.is_array() || z.size() != rows.size()) {
    return table;
  }
  table.columns.push_back({Text::tr("y\u00a0\\\u00a0x, mm"), true});
  for (const std::size_t i : columns) {
    table.columns.push_back({formatNumber(xs[i].get<double>()), true});
  }
  for (const std::size_t j : std::vector<std::size_t>(rows.rbegin(), rows.rend())) {
    ReportTable::Row row{{formatNumber(ys[j].get<double>())}, false};
    for (const std::size_t i : columns) {
      const bool there = z[j].is_array() && i < z[j].size();
      row.cells.push_back(there ? entryText(field, z[j][i]) : std::string());
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

ReportTable tableOf(const Field& field, const Json& value) {
  if (field.kind == FieldKind::grid) {
    return gridOf(field, value);
  }
  const Json rows = value.is_array() ? value : Json::array({value});
  return field.kind == FieldKind::checklist ? checklistOf(field, rows) : rowsOf(field, rows);
}

/// Values that a table read from a file has in every row.
KeyValues constantsOf(const Field& field, const Json& reference) {
  KeyValues facts;
  const Json constants = member(reference, "constants");
  for (const auto& column : field.columns) {
    if (const Json value = member(constants, column.key); !value.is_null()) {
      facts.pairs.emplace_back(column.label, withUnit(entryText(column, value), column.unit));
    }
  }
  return facts;
}

/// A table that is a file, not rows one of whose columns is called file.
bool isFile(const Field& field, const Json& value) {
  return member(value, "file").is_string() && !findField(field.columns, "file");
}

void addField(ReportBlocks& blocks, const Field& field, const Json& value) {
  blocks.emplace_back(Heading{4, headOf(field.label, field.unit)});
  if (isFile(field, value)) {
    blocks.emplace_back(Paragraph{say(Text::tr("Read from {0}."), entryText(field, value)), false});
    if (KeyValues constants = constantsOf(field, value); !constants.pairs.empty()) {
      blocks.emplace_back(std::move(constants));
    }
    return;
  }
  ReportTable table = tableOf(field, value);
  if (table.rows.empty()) {
    blocks.emplace_back(Paragraph{Text::tr("What was entered cannot be read as a table."), true});
  } else {
    blocks.emplace_back(std::move(table));
  }
}

}  // namespace

ReportBlocks reportReadings(const Step& step, const Json& inputs) {
  ReportBlocks blocks;
  if (KeyValues single = singleFields(step, inputs); !single.pairs.empty()) {
    blocks.emplace_back(Heading{4, Text::tr("Entered")});
    blocks.emplace_back(std::move(single));
  }
  for (const auto& field : step.fields) {
    const Json value = member(inputs, field.key);
    if (!isSingle(field) && !value.is_null() && !value.empty()) {
      addField(blocks, field, value);
    }
  }
  if (ReportTable instruments = instrumentsUsed(step, inputs); !instruments.rows.empty()) {
    blocks.emplace_back(Heading{4, Text::tr("Instruments")});
    blocks.emplace_back(std::move(instruments));
  }
  if (ReportTable files = filesRead(inputs); !files.rows.empty()) {
    blocks.emplace_back(Heading{4, Text::tr("Files read")});
    blocks.emplace_back(std::move(files));
  }
  return blocks;
}

}  // namespace fettle
