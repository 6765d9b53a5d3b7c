#include "core/report/report_readings.h"

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"

namespace fettle {
namespace {

std::string labelWithUnit(const Field& field) {
  const std::string unit = displayUnit(field.unit);
  return unit.empty() ? field.label : field.label + ", " + unit;
}

std::string choiceLabel(const Field& field, const std::string& key) {
  for (const auto& choice : field.choices) {
    if (choice.key == key) {
      return choice.label;
    }
  }
  return key;
}

std::string cellText(const Field& field, const Json& value) {
  if (value.is_number()) {
    return formatNumber(value.get<double>());
  }
  if (value.is_boolean()) {
    return value.get<bool>() ? Text::tr("yes") : Text::tr("no");
  }
  if (value.is_object() && value.contains("file")) {
    const std::string hash = value.value("sha256", "");
    return value.value("file", "") + (hash.empty() ? "" : ", SHA-256 " + hash);
  }
  return value.is_string() ? choiceLabel(field, value.get<std::string>()) : std::string();
}

bool isSingle(const Field& field) {
  return field.kind == FieldKind::number || field.kind == FieldKind::choice ||
         field.kind == FieldKind::text || field.kind == FieldKind::yesNo ||
         field.kind == FieldKind::capture;
}

ReportTable singleFields(const Step& step, const Json& inputs) {
  ReportTable table;
  table.columns = {{Text::tr("Entered"), false}, {Text::tr("Value"), true}};
  for (const auto& field : step.fields) {
    if (!isSingle(field) || !applies(field, inputs, step.fields)) {
      continue;
    }
    if (const auto found = inputs.find(field.key); found != inputs.end() && !found->is_null()) {
      table.rows.push_back({{labelWithUnit(field), cellText(field, *found)}, false});
    } else if (!field.fallback.is_null()) {
      table.rows.push_back(
          {{labelWithUnit(field), say(Text::tr("{0} (default)"), cellText(field, field.fallback))}, false});
    }
  }
  return table;
}

ReportTable rowsOf(const Field& field, const Json& rows) {
  const auto used = [&](const Field& column) {
    for (const auto& row : rows) {
      if (row.contains(column.key) && !row[column.key].is_null()) {
        return true;
      }
    }
    return false;
  };
  ReportTable table;
  std::vector<const Field*> columns;
  table.columns.push_back({"#", true});
  for (const auto& column : field.columns) {
    if (used(column)) {
      columns.push_back(&column);
      table.columns.push_back({labelWithUnit(column), column.kind == FieldKind::number});
    }
  }
  bool anyExcluded = false;
  std::size_t number = 0;
  for (const auto& row : rows) {
    ReportTable::Row line;
    line.cells.push_back(std::to_string(++number));
    for (const auto* column : columns) {
      line.cells.push_back(cellText(*column, row.value(column->key, Json())));
    }
    const std::string reason = row.value("excluded", "");
    line.struck = !reason.empty();
    anyExcluded = anyExcluded || line.struck;
    line.cells.push_back(reason);
    table.rows.push_back(std::move(line));
  }
  if (anyExcluded) {
    table.columns.push_back({Text::tr("Left out because"), false});
  } else {
    for (auto& row : table.rows) {
      row.cells.pop_back();
    }
  }
  return table;
}

ReportTable gridOf(const Field& field, const Json& grid) {
  ReportTable table;
  table.columns.push_back({Text::tr("y \\ x"), true});
  const Json& x = grid["x"];
  const Json& y = grid["y"];
  for (const auto& position : x) {
    table.columns.push_back({formatNumber(position.get<double>()), true});
  }
  for (std::size_t j = y.size(); j-- > 0;) {  // back row on top, as the bed lies in front of you
    ReportTable::Row row;
    row.cells.push_back(formatNumber(y[j].get<double>()));
    for (const auto& height : grid["z"][j]) {
      row.cells.push_back(cellText(field, height));
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

}  // namespace

std::vector<ReportBlock> reportReadings(const Step& step, const Json& inputs) {
  std::vector<ReportBlock> blocks;
  if (ReportTable single = singleFields(step, inputs); !single.rows.empty()) {
    blocks.emplace_back(std::move(single));
  }
  for (const auto& field : step.fields) {
    const auto found = inputs.find(field.key);
    if (found == inputs.end() || isSingle(field)) {
      continue;
    }
    blocks.emplace_back(Heading{3, labelWithUnit(field)});
    if (found->is_array()) {
      blocks.emplace_back(rowsOf(field, *found));
    } else if (found->is_object() && found->contains("z") && (*found)["z"].is_array()) {
      blocks.emplace_back(gridOf(field, *found));
    } else {
      blocks.emplace_back(Paragraph{cellText(field, *found), Paragraph::Tone::plain});
    }
  }
  return blocks;
}

}  // namespace fettle
