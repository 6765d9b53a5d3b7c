#include "core/report/report_sources.h"

#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"
#include "core/report/report_words.h"

namespace fettle {
namespace {

/// Whether a field, or a column in any row of its table, was entered. A file stands for all its columns.
bool wasEntered(const Json& where, const std::string& key) {
  if (where.is_array()) {
    return std::any_of(where.begin(), where.end(), [&](const Json& row) { return wasEntered(row, key); });
  }
  return where.is_object() && (where.contains("file") || (where.contains(key) && !where[key].is_null()));
}

Instrument instrumentOf(const Field& field, const Json& inputs) {
  const Instrument& usual = *field.instrument;
  const Json chosen = inputs.is_object() ? inputs.value("instruments", Json()) : Json();
  if (!chosen.is_object() || !chosen.contains(field.key) || !chosen[field.key].is_object()) {
    return usual;
  }
  const Json& given = chosen[field.key];
  const auto number = [&](const char* key) {
    return given.contains(key) && given[key].is_number() ? given[key].get<double>() : 0.0;
  };
  const bool named = given.contains("name") && given["name"].is_string();
  return {named ? given["name"].get<std::string>() : usual.name, number("r"), number("e"), 0, usual.unit};
}

std::string limitText(const Instrument& instrument) {
  std::string fixed = withUnit(formatNumber(instrument.e), instrument.unit);
  if (instrument.relativeError <= 0) {
    return fixed;
  }
  const std::string part = formatNumber(instrument.relativeError * 100);
  return instrument.e > 0 ? say(Text::tr("{0} and {1} % of the reading"), fixed, part)
                          : say(Text::tr("{0} % of the reading"), part);
}

struct Use {
  Instrument instrument;
  std::string readings;
};

void noteUse(std::vector<Use>& uses, const Field& field, const Json& where, const Json& inputs) {
  if (field.instrument && wasEntered(where, field.key)) {
    const Instrument instrument = instrumentOf(field, inputs);
    const auto same = std::find_if(uses.begin(), uses.end(),
                                   [&](const Use& known) { return known.instrument == instrument; });
    if (same == uses.end()) {
      uses.push_back({instrument, field.label});
    } else {
      same->readings += ", " + field.label;
    }
  }
  const Json rows = where.is_object() ? where.value(field.key, Json()) : Json();
  for (const auto& column : field.columns) {
    noteUse(uses, column, rows, inputs);
  }
}

void collectFiles(const Json& value, ReportTable& table) {
  if (value.is_object() && value.contains("file") && value["file"].is_string()) {
    const std::string hash = value.contains("sha256") && value["sha256"].is_string()
                                 ? value["sha256"].get<std::string>()
                                 : Text::tr("not known");
    const ReportTable::Row row{{value["file"].get<std::string>(), hash}, false};
    const bool known = std::any_of(table.rows.begin(), table.rows.end(),
                                   [&](const auto& other) { return other.cells == row.cells; });
    if (!known) {
      table.rows.push_back(row);
    }
    return;
  }
  if (value.is_structured()) {
    for (const auto& inner : value) {
      collectFiles(inner, table);
    }
  }
}

}  // namespace

ReportTable instrumentsUsed(const Step& step, const Json& inputs) {
  std::vector<Use> uses;
  for (const auto& field : step.fields) {
    noteUse(uses, field, inputs, inputs);
  }
  ReportTable table;
  table.columns = {{Text::tr("Readings"), false},
                   {Text::tr("Instrument"), false},
                   {Text::tr("Resolution"), true},
                   {Text::tr("Limit of error ±"), true}};
  for (const auto& use : uses) {
    if (use.instrument.standardUncertainty(1) == 0) {
      continue;  // a number somebody typed from a drawing or a screen
    }
    table.rows.push_back(
        {{use.readings, use.instrument.name, withUnit(formatNumber(use.instrument.r), use.instrument.unit),
          limitText(use.instrument)},
         false});
  }
  return table;
}

ReportTable filesRead(const Json& inputs) {
  ReportTable table;
  table.columns = {{Text::tr("File"), false}, {Text::tr("SHA-256 of its content"), false}};
  collectFiles(inputs, table);
  return table;
}

}  // namespace fettle
