#include "core/steps/contract/field_reader.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/contract/accepted_numbers.h"

namespace fettle {
namespace {

bool isBlank(const Json& value) {
  return value.is_null() || (value.is_string() && value.get_ref<const std::string&>().empty()) ||
         (value.is_array() && value.empty());
}

bool isBlankRow(const Json& row) {
  return std::all_of(row.begin(), row.end(), [](const Json& cell) { return isBlank(cell); });
}

bool isNumberList(const Json& value) {
  return value.is_array() &&
         std::all_of(value.begin(), value.end(), [](const Json& one) { return one.is_number(); });
}

std::string choiceWords(const Field& field) {
  std::string words;
  for (const auto& choice : field.choices) {
    words += (words.empty() ? "" : ", ") + choice.key;
  }
  return words;
}

AcceptedNumbers numbersOf(const Field& field) {
  return {field.minimum, field.maximum, field.whole, field.unit};
}

/// Rising copies of a net whose lines were given in either order; false when lines repeat or cross.
bool sortAxis(std::vector<double>& axis, Eigen::MatrixXd& z, bool columns) {
  if (axis.size() > 1 && axis.front() > axis.back()) {
    std::reverse(axis.begin(), axis.end());
    if (columns) {
      z = z.rowwise().reverse().eval();
    } else {
      z = z.colwise().reverse().eval();
    }
  }
  return std::adjacent_find(axis.begin(), axis.end(), std::greater_equal<>()) == axis.end();
}

/// A file reference that is wrong in form, in one clause; nothing for one that can be followed.
std::optional<std::string> referenceProblem(const Json& reference) {
  if (!reference["file"].is_string() || reference["file"] == Json("")) {
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

}  // namespace

std::string FieldReader::where(const Field& field) const {
  return m_rowLabel + field.label;
}

void FieldReader::refuse(const Field& field, const std::string& sentence) {
  if (!m_muted && !m_problem) {
    m_problem = where(field) + ": " + sentence;
  }
}

void FieldReader::noteMissing(const Field& field) {
  if (!m_muted) {
    m_missing.push_back(m_prefix + field.key);
  }
}

void FieldReader::noteUnknown(const std::string& key) {
  m_unknown.push_back(m_prefix + key);
}

std::optional<double> FieldReader::number(const Field& field, const Json& value) {
  if (isBlank(value)) {
    return std::nullopt;
  }
  if (!value.is_number() || !std::isfinite(value.get<double>())) {
    refuse(field, numbersOf(field).notANumber(value.dump()));
    return std::nullopt;
  }
  const double number = value.get<double>();
  if (!numbersOf(field).has(number)) {
    refuse(field, numbersOf(field).notPossible(formatNumber(number)));
    return std::nullopt;
  }
  return number;
}

std::optional<std::string> FieldReader::choice(const Field& field, const Json& value) {
  if (isBlank(value)) {
    return std::nullopt;
  }
  const auto known = [&](const Choice& choice) { return value == Json(choice.key); };
  if (std::none_of(field.choices.begin(), field.choices.end(), known)) {
    refuse(field, say(Text::tr("{0} is not one of the choices: {1}."), value.dump(), choiceWords(field)));
    return std::nullopt;
  }
  return value.get<std::string>();
}

std::optional<std::string> FieldReader::text(const Field& field, const Json& value) {
  if (value.is_null()) {
    return std::nullopt;
  }
  if (value.is_number()) {
    return value.dump();  // a number where words may stand too: "80" and 80 say the same
  }
  if (isNumberList(value)) {
    std::string words;  // readings one after another: [0.12, 0.09] and "0.12 0.09" say the same
    for (const Json& one : value) {
      words += (words.empty() ? "" : " ") + one.dump();
    }
    return words;
  }
  if (!value.is_string()) {
    refuse(field, say(Text::tr("{0} is not a text in quotes."), value.dump()));
    return std::nullopt;
  }
  return value.get<std::string>();
}

std::optional<bool> FieldReader::yesNo(const Field& field, const Json& value) {
  if (isBlank(value)) {
    return std::nullopt;
  }
  // Tables from files and sheets written by hand say it in words.
  if (value == "yes" || value == "true") {
    return true;
  }
  if (value == "no" || value == "false") {
    return false;
  }
  if (!value.is_boolean()) {
    refuse(field, say(Text::tr("{0} is neither yes nor no; true, false, \"yes\" or \"no\" is needed."),
                      value.dump()));
    return std::nullopt;
  }
  return value.get<bool>();
}

CapturePointer FieldReader::capture(const Field& field, const Json& value) {
  if (isBlank(value)) {
    return nullptr;
  }
  if (!value.is_object() || !value.contains("file") || !m_files) {
    refuse(field, Text::tr("a file is needed, as {\"file\": path}."));
    return nullptr;
  }
  if (m_muted) {
    return nullptr;
  }
  if (const auto problem = referenceProblem(value)) {
    refuse(field, *problem);
    return nullptr;
  }
  auto read = m_files->capture(value, field);
  if (!read) {
    refuse(field, read.error());
    return nullptr;
  }
  return *read;
}

GridReadings FieldReader::grid(const Field& field, const Json& value) {
  GridReadings grid;
  if (isBlank(value)) {
    return grid;
  }
  Json net = value;
  if (value.is_object() && value.contains("file") && m_files) {
    if (const auto problem = referenceProblem(value)) {
      refuse(field, *problem);
      return grid;
    }
    auto read = m_files->grid(value, field);
    if (!read) {
      refuse(field, read.error());
      return grid;
    }
    net = *read;
  }
  if (!net.is_object() || !net.contains("z") || !net["z"].is_array() || !net.contains("x") ||
      !net.contains("y") || !isNumberList(net["x"]) || !isNumberList(net["y"])) {
    refuse(field, Text::tr("a grid needs x and y as lists of numbers and z with one row for each y."));
    return grid;
  }
  grid.x = net["x"].get<std::vector<double>>();
  grid.y = net["y"].get<std::vector<double>>();
  const Json& rows = net["z"];
  if (rows.size() != grid.y.size()) {
    refuse(field,
           say(Text::tr("{0} rows of heights do not fit {1} values of y; one row for each y is needed."),
               rows.size(), grid.y.size()));
    return {};
  }
  grid.z.resize(static_cast<Eigen::Index>(grid.y.size()), static_cast<Eigen::Index>(grid.x.size()));
  const AcceptedNumbers heights = numbersOf(field);
  bool blankCell = false;
  for (std::size_t j = 0; j < rows.size(); ++j) {
    if (!rows[j].is_array() || rows[j].size() != grid.x.size()) {
      refuse(field,
             say(Text::tr("row {0} has not the {1} heights that x asks for."), j + 1, grid.x.size()));
      return {};
    }
    for (std::size_t i = 0; i < grid.x.size(); ++i) {
      const Json& cell = rows[j][i];
      const bool isWord = !cell.is_number() && !isBlank(cell);
      if (isWord || (cell.is_number() && !heights.has(cell.get<double>()))) {
        refuse(field, say(Text::tr("row {0}, column {1}: {2}"), j + 1, i + 1,
                          isWord ? heights.notANumber(cell.dump())
                                 : heights.notPossible(formatNumber(cell.get<double>()))));
        return {};
      }
      blankCell = blankCell || isBlank(cell);
      grid.z(static_cast<Eigen::Index>(j), static_cast<Eigen::Index>(i)) =
          cell.is_number() ? cell.get<double>() : std::numeric_limits<double>::quiet_NaN();
    }
  }
  if (!sortAxis(grid.x, grid.z, true) || !sortAxis(grid.y, grid.z, false)) {
    refuse(field, Text::tr("the lines of x and of y must rise (or fall) without a repeat."));
    return {};
  }
  if (blankCell) {
    noteMissing(field);
    return {};
  }
  return grid;
}

std::vector<ChecklistAnswer> FieldReader::checklist(const Field& field, const Json& value) {
  std::vector<ChecklistAnswer> answers;
  if (isBlank(value)) {
    return answers;
  }
  if (!value.is_array()) {
    refuse(field, Text::tr("a list of {item, ok, remark} is needed."));
    return answers;
  }
  for (const Json& line : value) {
    Field item;
    item.choices = field.choices;
    item.label = field.label;
    ChecklistAnswer answer;
    answer.item = choice(item, line.is_object() ? line.value("item", Json()) : line).value_or("");
    if (line.is_object()) {
      answer.ok = yesNo(item, line.value("ok", Json()));
      answer.remark = text(item, line.value("remark", Json())).value_or("");
      answer.initials = text(item, line.value("initials", Json())).value_or("");
      answer.time = text(item, line.value("time", Json())).value_or("");
    }
    answers.push_back(std::move(answer));
  }
  return answers;
}

void FieldReader::eachRow(const Field& field, const Json& value,
                          const std::function<void(const Json&, TableRow)>& row) {
  if (isBlank(value)) {
    return;
  }
  Json rows = value;
  if (value.is_object() && value.contains("file") && m_files) {
    if (const auto problem = referenceProblem(value)) {
      refuse(field, *problem);
      return;
    }
    auto read = m_files->table(value, field);
    if (!read) {
      refuse(field, read.error());
      return;
    }
    rows = *read;
  } else if (value.is_object()) {
    rows = Json::array({value});
  }
  if (!rows.is_array()) {
    refuse(field, Text::tr("a table is an array of objects keyed by column."));
    return;
  }
  std::size_t number = 0;
  for (const Json& given : rows) {
    ++number;
    if (!given.is_object()) {
      refuse(field, say(Text::tr("row {0} is not an object keyed by column."), number));
      return;
    }
    Json cells = given;
    TableRow common;
    common.number = number;
    if (const auto reason = cells.find("excluded"); reason != cells.end()) {
      if (!reason->is_string() && !reason->is_null() && *reason != false) {
        refuse(field, say(Text::tr("row {0}, excluded: {1} is no reason; a text in quotes is needed."),
                          number, reason->dump()));
        return;
      }
      if (reason->is_string() && !reason->get_ref<const std::string&>().empty()) {
        common.excluded = reason->get<std::string>();
      }
      cells.erase(reason);
    }
    if (isBlankRow(cells)) {
      continue;
    }
    m_prefix = fmt::format("{}[{}].", field.key, number);
    m_rowLabel = say(Text::tr("{0}, row {1}, "), field.label, number);
    m_muted = common.excluded.has_value();
    row(cells, std::move(common));
    m_muted = false;
    m_prefix.clear();
    m_rowLabel.clear();
  }
}

}  // namespace fettle
