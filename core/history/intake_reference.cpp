#include "core/history/intake_reference.h"

#include <map>

#include "core/fields/field_reader.h"
#include "core/measure/text.h"

namespace fettle {

std::optional<std::string> referenceProblem(const Json& reference) {
  const Json file = reference.value("file", Json());
  if (!file.is_string() || file == Json("")) {
    return Text::tr("a file is needed, as {\"file\": path}.");
  }
  for (const char* key : {"columns", "units", "constants", "format"}) {
    if (reference.contains(key) && !reference[key].is_object()) {
      return say(Text::tr("{0} of a file must be an object of columns."), key);
    }
  }
  for (const char* key : {"x", "y"}) {
    if (reference.contains(key) && !isNumberList(reference[key])) {
      return say(Text::tr("{0} of a grid file must be a list of numbers."), key);
    }
  }
  for (const char* key : {"columns_first", "back_row_first", "right_to_left"}) {
    if (reference.contains(key) && !reference[key].is_boolean()) {
      return say(Text::tr("{0} of a grid file must be true or false."), key);
    }
  }
  return std::nullopt;
}

std::vector<WantedColumn> wantedColumns(const Field& field) {
  std::vector<WantedColumn> wanted;
  for (const auto& column : field.columns) {
    if (column.kind == FieldKind::capture || column.kind == FieldKind::table) {
      continue;
    }
    WantedColumn one;
    one.key = column.key;
    one.label = column.label;
    one.unit = column.unit;
    // Columns of a table that the file leaves out stay blank; the step says what is missing.
    one.required = field.kind == FieldKind::capture && column.required;
    one.words = column.kind != FieldKind::number;
    one.synonyms = column.aliases;
    wanted.push_back(std::move(one));
  }
  if (field.kind == FieldKind::table) {
    WantedColumn excluded;
    excluded.key = "excluded";
    excluded.label = Text::tr("excluded");
    excluded.required = false;
    excluded.words = excluded.onlyByHeader = true;
    wanted.push_back(std::move(excluded));
  }
  return wanted;
}

ColumnChoice columnChoice(const Json& reference) {
  ColumnChoice choice;
  if (!reference.is_object()) {
    return choice;
  }
  const Json columns = reference.value("columns", Json::object());
  const Json units = reference.value("units", Json::object());
  for (const auto& [key, source] : columns.items()) {
    choice.columns[key] = source.is_number_integer() ? std::to_string(source.get<long long>())
                          : source.is_string()       ? source.get<std::string>()
                                                     : std::string();
  }
  for (const auto& [key, unit] : units.items()) {
    choice.units[key] = unit.is_string() ? unit.get<std::string>() : unit.dump();
  }
  choice.inOrder = true;
  return choice;
}

FormatHints formatHints(const Json& reference) {
  static const std::map<std::string, Delimiter> delimiters{{"comma", Delimiter::comma},
                                                           {"semicolon", Delimiter::semicolon},
                                                           {"tab", Delimiter::tab},
                                                           {"blanks", Delimiter::blanks}};
  FormatHints hints;
  const auto format = reference.find("format");
  if (format == reference.end() || !format->is_object()) {
    return hints;
  }
  const auto delimiter = format->find("delimiter");
  if (delimiter != format->end() && delimiter->is_string()) {
    const auto named = delimiters.find(delimiter->get<std::string>());
    hints.delimiter = named == delimiters.end() ? hints.delimiter : std::optional(named->second);
  }
  if (const auto sign = format->find("decimal_sign"); sign != format->end()) {
    hints.decimalSign = *sign == Json(",") ? ',' : '.';
  }
  const auto skipped = format->find("skipped_lines");
  if (skipped != format->end() && skipped->is_number_unsigned()) {
    hints.skippedLines = skipped->get<std::size_t>();
  }
  return hints;
}

GridOptions gridOptions(const Json& reference) {
  GridOptions options;
  if (!reference.is_object()) {
    return options;  // nothing is said about how the grid lies
  }
  options.x = reference.value("x", std::vector<double>{});
  options.y = reference.value("y", std::vector<double>{});
  options.useSuggested = options.x.empty() && options.y.empty();
  options.columnsFirst = reference.value("columns_first", false);
  options.backRowFirst = reference.value("back_row_first", false);
  options.rightToLeft = reference.value("right_to_left", false);
  options.format = formatHints(reference);
  return options;
}

}  // namespace fettle
