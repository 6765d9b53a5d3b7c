#include "core/steps/config_review/review.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <set>

#include "core/measure/format.h"
#include "core/measure/number_text.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"
#include "core/steps/config_review/settings.h"

namespace fettle {
namespace {

std::string shown(const SettingValue& value) {
  return value.number ? formatNumber(*value.number) : value.text;
}

/// A number, with decimal point or comma, and the unit behind it if there is one.
std::optional<double> numberWithUnit(const std::string& text, const std::string& unit) {
  if (const auto plain = numberFromKeyboard(text)) {
    return *plain;
  }
  for (const char decimalSign : {'.', ','}) {
    double value = 0;
    const std::string_view whole = trimmed(text);
    const char* end = scanNumber(whole.data(), whole.data() + whole.size(), decimalSign, value);
    if (!end) {
      continue;
    }
    const std::string_view behind = trimmed(whole.substr(static_cast<std::size_t>(end - whole.data())));
    if (const auto converted = convert(value, behind, unit)) {
      return *converted;
    }
  }
  return std::nullopt;
}

tl::expected<SettingValue, std::string> wordOf(const std::string& text, const ListedSetting& setting) {
  std::string word(trimmed(text));
  if (!setting.words.empty() &&
      std::find(setting.words.begin(), setting.words.end(), word) == setting.words.end()) {
    return tl::unexpected(
        say(Text::tr("\"{0}\" is none of {1}."), word, fmt::to_string(fmt::join(setting.words, ", "))));
  }
  return SettingValue{std::nullopt, std::move(word)};
}

std::string pathOf(const ListedValue& row) {
  return fmt::format("found[{}]", row.number);
}

void noteUnmatched(StepResult& result, const std::vector<const ListedValue*>& rows) {
  constexpr std::size_t mostNamed = 5;
  std::size_t strange = 0;
  std::string names;
  for (const ListedValue* row : rows) {
    if (const auto setting = suggestedSetting(row->name)) {
      result.addFinding(
          "match-suggested", Severity::note,
          say(Text::tr("Row {0}, {1} = {2}, may be \"{3}\". If it is, choose it as the setting."),
              row->number, row->name, row->value, findListed(*setting)->description.label),
          {}, pathOf(*row));
    } else if (++strange <= mostNamed) {
      names += (names.empty() ? "" : "; ") + say(Text::tr("row {0}, {1}"), row->number, row->name);
    }
  }
  if (strange > mostNamed) {
    names += say(Text::tr("; and {0} more"), strange - mostNamed);
  }
  if (strange > 0) {
    result.addFinding("not-matched", Severity::note,
                      say(Text::tr("Without a setting, and so not used: {0}."), names));
  }
}

void noteDifference(StepResult& result, const ListedValue& row, const SettingValue& value,
                    const SettingValues& asFound) {
  const auto known = asFound.find(row.setting);
  if (known != asFound.end() && !known->second.blank() && !(known->second == value)) {
    result.addFinding("differs-from-as-found", Severity::note,
                      say(Text::tr("{0}: the list says {1}, as found so far was {2}. The list counts."),
                          findListed(row.setting)->description.label, shown(value), shown(known->second)),
                      {}, pathOf(row));
  }
}

/// Throws Refusal for a value as found that its setting cannot have.
void refuseImpossible(const std::string& id, const SettingValue& value) {
  const ListedSetting* setting = findListed(id);
  if (!setting || value.blank()) {
    return;
  }
  std::string wrong;
  if (setting->description.unit.empty()) {
    const auto word = wordOf(shown(value), *setting);
    wrong = word ? "" : word.error();
  } else if (value.number && !setting->numbers.has(*value.number)) {  // a word is refused before
    wrong = setting->numbers.notPossible(shown(value));
  }
  if (!wrong.empty()) {
    throw Refusal{say(Text::tr("As found, {0}: {1}"), id, wrong), "as_found." + id};
  }
}

/// The value of a matched row. Throws Refusal when its setting cannot have it, or an earlier row says
/// something else.
SettingValue matchedValue(const ListedValue& row, const SettingValues& earlier) {
  const std::string& label = findListed(row.setting)->description.label;
  const auto value = valueOf(row.value, row.setting);
  if (!value) {
    throw Refusal{say(Text::tr("Found, row {0}, {1}: {2}"), row.number, label, value.error()),
                  pathOf(row) + ".value"};
  }
  if (const auto known = earlier.find(row.setting); known != earlier.end() && !(known->second == *value)) {
    throw Refusal{say(Text::tr("Found, row {0}: {1} is {2} here and {3} in an earlier row; one of the two "
                               "is needed."),
                      row.number, label, shown(*value), shown(known->second)),
                  pathOf(row)};
  }
  return *value;
}

}  // namespace

std::optional<double> Review::number(const std::string& id) const {
  const auto found = values.find(id);
  return found == values.end() ? std::nullopt : found->second.number;
}

std::string Review::word(const std::string& id) const {
  const auto found = values.find(id);
  return found == values.end() ? std::string() : found->second.text;
}

std::string Review::at(const std::string& id) const {
  const auto row = rows.find(id);
  return row == rows.end() ? std::string() : row->second;
}

tl::expected<SettingValue, std::string> valueOf(const std::string& text, const std::string& id) {
  const ListedSetting& setting = *findListed(id);
  const std::string& unit = setting.description.unit;
  if (unit.empty()) {
    return wordOf(text, setting);
  }
  const auto number = numberWithUnit(text, unit);
  if (!number) {
    return tl::unexpected(setting.numbers.notANumber('"' + text + '"'));
  }
  if (!setting.numbers.has(*number)) {
    return tl::unexpected(setting.numbers.notPossible(text));
  }
  return SettingValue{*number, {}};
}

Review reviewOf(StepResult& result, const std::vector<ListedValue>& rows, const StepContext& context) {
  Review review{context.sheet, context.asFound, {}};
  std::set<std::string> refused;
  for (const auto& [id, value] : context.asFound) {
    if (!result.attempt({}, [&, &setting = id, &known = value] { refuseImpossible(setting, known); })) {
      review.values.erase(id);
    }
  }
  std::vector<const ListedValue*> unmatched;
  for (const auto& row : rows) {
    if (row.setting.empty()) {
      unmatched.push_back(&row);
    } else if (trimmed(row.value).empty()) {
      result.want({pathOf(row) + ".value"});
    } else if (!result.attempt({}, [&] {
                 const SettingValue value = matchedValue(row, result.found);
                 if (result.found.emplace(row.setting, value).second) {
                   review.rows[row.setting] = pathOf(row);
                   noteDifference(result, row, value, context.asFound);
                 }
               })) {
      refused.insert(row.setting);
    }
  }
  for (const auto& id : refused) {
    result.found.erase(id);
    review.values.erase(id);
  }
  for (const auto& [id, value] : result.found) {
    review.values[id] = value;
  }
  noteUnmatched(result, unmatched);
  return review;
}

}  // namespace fettle
