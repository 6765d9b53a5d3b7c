#include "core/fields/field_reader.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <utility>

#include "core/fields/accepted_numbers.h"
#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

bool isBlankRow(const Json& row) {
  return std::all_of(row.begin(), row.end(), [](const Json& cell) { return isBlankValue(cell); });
}

std::string choiceWords(const Field& field) {
  std::string words;
  for (const auto& choice : field.choices) {
    words += (words.empty() ? "" : ", ") + choice.key;
  }
  return words;
}

/// What a field of a record takes, in words.
std::string whatIsNeeded(const Field& field) {
  switch (field.kind) {
    case FieldKind::number:
      return numbersOf(field).words();
    case FieldKind::yesNo:
      return Text::tr("true or false");
    case FieldKind::value:
      return Text::tr("a number or a text in quotes");
    case FieldKind::list:
      return Text::tr("a list in brackets");
    case FieldKind::object:
    case FieldKind::values:
    case FieldKind::map:
      return Text::tr("an object in braces");
    default:
      return Text::tr("a text in quotes");
  }
}

}  // namespace

bool isSameWord(std::string_view first, std::string_view second) {
  const auto lower = [](char letter) { return std::tolower(static_cast<unsigned char>(letter)); };
  return std::equal(first.begin(), first.end(), second.begin(), second.end(),
                    [&](char a, char b) { return lower(a) == lower(b); });
}

std::optional<bool> yesNoFromWord(std::string_view word) {
  if (isSameWord(word, "yes") || isSameWord(word, "true")) {
    return true;
  }
  return isSameWord(word, "no") || isSameWord(word, "false") ? std::optional(false) : std::nullopt;
}

bool isBlankValue(const Json& value) {
  return value.is_null() || (value.is_string() && value.get_ref<const std::string&>().empty()) ||
         (value.is_array() && value.empty());
}

bool isNumberList(const Json& value) {
  return value.is_array() &&
         std::all_of(value.begin(), value.end(), [](const Json& one) { return one.is_number(); });
}

AcceptedNumbers numbersOf(const Field& field) {
  return {field.minimum, field.maximum, field.whole, field.unit};
}

std::string FieldReader::where(const Field& field) const {
  return m_saysPaths ? m_prefix + field.key : m_rowLabel + field.label;
}

void FieldReader::refuse(const Field& field, const std::string& sentence) {
  refuseAt(field.key, field, sentence);
}

void FieldReader::refuseAt(const std::string& path, const Field& field, const std::string& sentence) {
  if (!m_muted) {
    const std::string place = m_saysPaths ? m_prefix + path : where(field);
    m_refusals.push_back({m_prefix + path, place + ": " + sentence});
    m_rowSpoiled = true;
  }
}

void FieldReader::noteMissing(const Field& field) {
  if (m_saysPaths) {
    m_refusals.push_back({m_prefix + field.key, say(Text::tr("{0} is missing; {1} is needed."),
                                                    m_prefix + field.key, whatIsNeeded(field))});
  }
  if (!m_muted) {
    m_missing.push_back(m_prefix + field.key);
    m_rowSpoiled = true;
  }
}

void FieldReader::noteRows(const Field& table, bool none) {
  if (none) {
    m_withoutRows.insert(m_prefix + table.key);
  }
}

void FieldReader::noteUnknown(const std::string& key, const std::vector<Field>& known) {
  m_unknown.push_back(m_prefix + key);
  if (m_saysPaths) {
    std::string keys;
    for (const auto& field : known) {
      keys += (keys.empty() ? "" : ", ") + field.key;
    }
    m_refusals.push_back(
        {m_prefix + key,
         say(Text::tr("{0} is not a field of a history; possible are here: {1}."), m_prefix + key, keys)});
  }
}

std::optional<double> FieldReader::number(const Field& field, const Json& value) {
  if (isBlankValue(value)) {
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
  if (isBlankValue(value)) {
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
  if (isBlankValue(value)) {
    return std::nullopt;
  }
  // Tables from files and sheets written by hand say it in words.
  const auto said = value.is_boolean()  ? std::optional(value.get<bool>())
                    : value.is_string() ? yesNoFromWord(value.get_ref<const std::string&>())
                                        : std::nullopt;
  if (!said) {
    refuse(field, say(Text::tr("{0} is neither yes nor no; true, false, \"yes\" or \"no\" is needed."),
                      value.dump()));
  }
  return said;
}

std::optional<std::string> FieldReader::problem() const {
  return m_refusals.empty() ? m_fileProblem : std::optional(m_refusals.front().sentence);
}

void FieldReader::noteFileProblem(const Field& field, const std::string& sentence) {
  if (!m_muted && !m_fileProblem) {
    m_fileProblem = where(field) + ": " + sentence;
  }
}

CapturePointer FieldReader::capture(const Field& field, const Json& value) {
  if (isBlankValue(value)) {
    return nullptr;
  }
  if (!value.is_object() || !value.contains("file") || !m_files) {
    refuse(field, Text::tr("a file is needed, as {\"file\": path}."));
    return nullptr;
  }
  if (m_muted) {
    return nullptr;
  }
  auto read = m_files->capture(value, field);
  if (!read) {
    noteFileProblem(field, read.error());
    return nullptr;
  }
  return *read;
}

std::optional<Json> FieldReader::opened(const Field& field, const Json& value, OpenFile open) {
  if (!value.is_object() || !value.contains("file") || !m_files) {
    return value;
  }
  auto read = (m_files->*open)(value, field);
  if (!read) {
    noteFileProblem(field, read.error());
    return std::nullopt;
  }
  return std::move(*read);
}

std::vector<ChecklistAnswer> FieldReader::checklist(const Field& field, const Json& value) {
  std::vector<ChecklistAnswer> answers;
  if (isBlankValue(value)) {
    return answers;
  }
  if (!value.is_array()) {
    refuse(field, Text::tr("a list of {item, ok, remark} is needed."));
    return answers;
  }
  for (const Json& line : value) {
    Field item;
    item.choices = field.choices;
    item.key = field.key;
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
  if (isBlankValue(value)) {
    return;
  }
  auto rows = opened(field, value, &InputFiles::table);
  if (!rows) {
    return;
  }
  if (rows->is_object()) {
    rows = Json::array({*rows});
  }
  if (!rows->is_array()) {
    refuse(field, Text::tr("a table is an array of objects keyed by column."));
    return;
  }
  std::size_t number = 0;
  for (const Json& given : *rows) {
    ++number;
    if (!given.is_object()) {
      refuse(field, say(Text::tr("row {0} is not an object keyed by column."), number));
      continue;
    }
    Json cells = given;
    TableRow common;
    common.number = number;
    if (const auto reason = cells.find("excluded"); reason != cells.end()) {
      if (!reason->is_string() && !reason->is_null() && *reason != false) {
        refuse(field, say(Text::tr("row {0}, excluded: {1} is no reason; a text in quotes is needed."),
                          number, reason->dump()));
        continue;
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
    m_rowSpoiled = false;
    row(cells, std::move(common));
    m_rowSpoiled = false;
    m_muted = false;
    m_prefix.clear();
    m_rowLabel.clear();
  }
}

}  // namespace fettle
