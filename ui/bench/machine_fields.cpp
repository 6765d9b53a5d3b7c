#include "ui/bench/machine_fields.h"

#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/number_text.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"
#include "core/steps/catalogue.h"
#include "core/steps/contract/machine_sheet.h"

namespace fettle::ui {
namespace {

Field column(FieldKind kind, const std::string& key, const std::string& label, bool required = false) {
  Field field;
  field.kind = kind;
  field.key = key;
  field.label = label;
  field.required = required;
  return field;
}

Field table(const std::string& key, const std::string& label, std::vector<Field> columns) {
  Field field = column(FieldKind::table, key, label);
  field.columns = std::move(columns);
  return field;
}

std::string text(const Json& row, const char* key) {
  const auto found = row.find(key);
  return found != row.end() && found->is_string() ? found->get<std::string>() : std::string();
}

std::optional<double> number(const Json& row, const char* key) {
  const auto found = row.find(key);
  return found != row.end() && found->is_number() ? std::optional(found->get<double>()) : std::nullopt;
}

Json orNull(const std::optional<double>& value) {
  return value ? Json(*value) : Json();
}

/// The settings a controller may have been delivered with: those of the steps, and sheet keys that mean a
/// limit or a current.
std::vector<Choice> settingChoices() {
  std::vector<Choice> choices;
  const auto add = [&](const std::string& id, const std::string& label, const std::string& unit) {
    const bool isKnown =
        std::any_of(choices.begin(), choices.end(), [&](const Choice& choice) { return choice.key == id; });
    if (isKnown) {
      return;
    }
    const std::string shown = displayUnit(unit);
    choices.push_back({id, label + (shown.empty() ? "" : ", " + shown)});
  };
  for (const auto& setting : knownSettings()) {
    if (const std::string prefix = "<axis>"; setting.id.starts_with(prefix)) {
      for (const std::string axis : {"x", "y", "z"}) {
        add(axis + setting.id.substr(prefix.size()), axis + ": " + setting.label, setting.unit);
      }
    } else {
      add(setting.id, setting.label, setting.unit);
    }
  }
  for (const auto& field : machineSheetFields()) {
    if (field.kind == FieldKind::number) {
      add(field.key, field.label, field.unit);
    }
  }
  return choices;
}

std::string labelOf(const std::string& id) {
  for (const auto& choice : settingChoices()) {
    if (choice.key == id) {
      return choice.label;
    }
  }
  return id;
}

/// A setting of a step without a unit is a word.
bool isNumberSetting(const std::string& id) {
  const auto& known = knownSettings();
  const auto& sheet = machineSheetFields();
  return std::any_of(known.begin(), known.end(),
                     [&](const SettingDescription& setting) {
                       return matchesPattern(id, setting.id) && !setting.unit.empty();
                     }) ||
         std::any_of(sheet.begin(), sheet.end(), [&](const Field& field) {
           return field.key == id && field.kind == FieldKind::number;
         });
}

}  // namespace

std::vector<Field> foundFields() {
  Field setting = column(FieldKind::choice, "setting", Text::tr("Setting"), true);
  setting.choices = settingChoices();
  return {table("as_found", Text::tr("As found"),
                {setting, column(FieldKind::text, "value", Text::tr("Value"), true),
                 column(FieldKind::text, "source", Text::tr("Where it was read"))})};
}

Json foundRows(const MachineRecord& machine) {
  Json rows = Json::array();
  for (const auto& [id, found] : machine.asFound) {
    rows.push_back({{"setting", id},
                    {"value", found.value.number ? formatNumber(*found.value.number) : found.value.text},
                    {"source", found.source}});
  }
  return rows;
}

void takeFoundRows(const Json& rows, const std::string& date, MachineRecord& machine) {
  const auto before = machine.asFound;
  machine.asFound.clear();
  for (const auto& row : rows.is_array() ? rows : Json::array()) {
    const std::string id = text(row, "setting");
    const std::string typed = text(row, "value");
    if (id.empty() || typed.empty()) {
      continue;
    }
    FoundSetting found;
    const auto number = numberFromKeyboard(typed);
    found.value = number ? SettingValue{*number, {}} : SettingValue{std::nullopt, typed};
    found.source = text(row, "source");
    const auto known = before.find(id);
    const bool same = known != before.end() && known->second.value == found.value;
    found.date = same ? known->second.date : date;
    machine.asFound[id] = found;
  }
}

FoundProblem foundProblem(const Json& rows) {
  int number = 0;
  for (const auto& row : rows.is_array() ? rows : Json::array()) {
    ++number;
    const std::string id = text(row, "setting");
    const std::string typed = text(row, "value");
    const auto read = numberFromKeyboard(typed);
    if (!typed.empty() && isNumberSetting(id) && !read) {
      return {number, labelOf(id) + ": " + read.error()};
    }
  }
  return {};
}

std::vector<Field> instrumentFields() {
  Field r = column(FieldKind::number, "r", Text::tr("Resolution"), true);
  Field e = column(FieldKind::number, "e", Text::tr("Limit of error ±"), true);
  Field relative = column(FieldKind::number, "relative", Text::tr("± of the reading"));
  r.minimum = e.minimum = relative.minimum = 0;
  relative.unit = "1";
  Field unit = column(FieldKind::choice, "unit", Text::tr("Unit"), true);
  for (const char* key : {"mm", "g", "C", "V", "A", "ohm", "s", "N", "Hz"}) {
    unit.choices.push_back({key, displayUnit(key)});
  }
  return {table("instruments_list", Text::tr("Instruments"),
                {column(FieldKind::text, "name", Text::tr("Name"), true), r, e, relative, unit})};
}

Json instrumentRows(const MachineRecord& machine) {
  Json rows = Json::array();
  for (const auto& one : machine.instruments) {
    rows.push_back({{"name", one.name},
                    {"r", one.r},
                    {"e", one.e},
                    {"relative", one.relativeError},
                    {"unit", one.unit}});
  }
  return rows;
}

void takeInstrumentRows(const Json& rows, MachineRecord& machine) {
  machine.instruments.clear();
  for (const auto& row : rows.is_array() ? rows : Json::array()) {
    if (!text(row, "name").empty()) {
      machine.instruments.push_back({text(row, "name"), number(row, "r").value_or(0),
                                     number(row, "e").value_or(0), number(row, "relative").value_or(0),
                                     text(row, "unit").empty() ? "mm" : text(row, "unit")});
    }
  }
}

std::vector<Field> toleranceFields() {
  Field result = column(FieldKind::choice, "result", Text::tr("Result"), true);
  for (const auto& step : catalogue()) {
    for (const auto& described : step.results) {
      if (described.judged) {
        const std::string unit = displayUnit(described.unit);
        result.choices.push_back({step.key + "." + described.id,
                                  step.name + ": " + described.label + (unit.empty() ? "" : ", " + unit)});
      }
    }
  }
  return {table("tolerances", Text::tr("Tolerances"),
                {result, column(FieldKind::number, "low", Text::tr("From")),
                 column(FieldKind::number, "high", Text::tr("To"))})};
}

Json toleranceRows(const MachineRecord& machine) {
  Json rows = Json::array();
  for (const auto& step : catalogue()) {
    for (const auto& described : step.results) {
      const std::string id = step.key + "." + described.id;
      const auto changed = machine.tolerances.find(id);
      const Tolerance& tolerance =
          changed == machine.tolerances.end() ? described.tolerance : changed->second;
      if (described.judged) {
        rows.push_back({{"result", id}, {"low", orNull(tolerance.low)}, {"high", orNull(tolerance.high)}});
      }
    }
  }
  return rows;
}

void takeToleranceRows(const Json& rows, MachineRecord& machine) {
  machine.tolerances.clear();
  for (const auto& row : rows.is_array() ? rows : Json::array()) {
    const std::string id = text(row, "result");
    const Tolerance wanted{number(row, "low"), number(row, "high")};
    const std::size_t dot = id.find('.');
    const Step* step = dot == std::string::npos ? nullptr : findStep(id.substr(0, dot));
    const ResultDescription* described = step ? step->describe(id.substr(dot + 1)) : nullptr;
    if (described && wanted != described->tolerance) {
      machine.tolerances[id] = wanted;
    }
  }
}

}  // namespace fettle::ui
