#include "core/store/record_json.h"

#include "core/steps/contract/shared_inputs.h"

namespace fettle {
namespace {

Json number(const std::optional<double>& value) {
  return value ? Json(*value) : Json();
}

std::optional<double> optionalNumber(const Json& json, const char* key) {
  const auto found = json.find(key);
  return found == json.end() || found->is_null() ? std::nullopt : std::optional(found->get<double>());
}

std::string textOf(const Json& json, const char* key, const char* otherwise = "") {
  const auto found = json.find(key);
  return found == json.end() || found->is_null() ? std::string(otherwise) : found->get<std::string>();
}

Json toJson(const SettingValue& value) {
  return value.number ? Json(*value.number) : Json(value.text);
}

SettingValue settingFromJson(const Json& json) {
  return json.is_number() ? SettingValue{json.get<double>(), {}}
                          : SettingValue{std::nullopt, json.get<std::string>()};
}

Adoption adoptionFromJson(const Json& json) {
  return {json.at("setting").get<std::string>(),
          settingFromJson(json.at("value")),
          textOf(json, "unit"),
          optionalNumber(json, "u"),
          optionalNumber(json, "U"),
          textOf(json, "date")};
}

}  // namespace

Json toJson(const MachineRecord& machine) {
  Json json = machine.sheet;
  json["as_found"] = Json::object();
  for (const auto& [setting, found] : machine.asFound) {
    json["as_found"][setting] = {
        {"value", toJson(found.value)}, {"date", found.date}, {"source", found.source}};
  }
  json["tolerances"] = Json::object();
  for (const auto& [result, tolerance] : machine.tolerances) {
    json["tolerances"][result] = {number(tolerance.low), number(tolerance.high)};
  }
  return json;
}

MachineRecord machineFromJson(const Json& json) {
  MachineRecord machine;
  machine.sheet = json;
  machine.sheet.erase("as_found");
  machine.sheet.erase("tolerances");
  const Json found = json.value("as_found", Json::object());
  for (const auto& [setting, value] : found.items()) {
    FoundSetting& one = machine.asFound[setting];
    one.value = settingFromJson(value.is_object() ? value.at("value") : value);
    one.date = value.is_object() ? textOf(value, "date") : "";
    one.source = value.is_object() ? textOf(value, "source") : "";
  }
  const Json tolerances = json.value("tolerances", Json::object());
  for (const auto& [result, ends] : tolerances.items()) {
    const auto read = [](const Json& end) {
      return end.is_null() ? std::nullopt : std::optional(end.get<double>());
    };
    machine.tolerances[result] = {read(ends.at(0)), read(ends.at(1))};
  }
  return machine;
}

Json toJson(const Instrument& instrument) {
  return {{"name", instrument.name},
          {"r", instrument.r},
          {"e", instrument.e},
          {"relative", instrument.relativeError},
          {"unit", instrument.unit}};
}

Instrument instrumentFromJson(const Json& json) {
  return {json.at("name").get<std::string>(), json.at("r").get<double>(), json.at("e").get<double>(),
          optionalNumber(json, "relative").value_or(0.0), textOf(json, "unit", "mm")};
}

Json toJson(const PartChange& change) {
  return {{"date", change.date}, {"group", change.group}, {"note", change.note}};
}

PartChange partChangeFromJson(const Json& json) {
  return {0, textOf(json, "date"), json.at("group").get<std::string>(), textOf(json, "note")};
}

Json toJson(const Session& session) {
  return {{"date", session.date},
          {"operator", session.person},
          {"reason", session.reason},
          {"filament", session.filament},
          {"print_hours", number(session.printHours)},
          {"bench_seconds", session.benchSeconds}};
}

Session sessionFromJson(const Json& json) {
  Session session;
  session.date = json.at("date").get<std::string>();
  session.person = textOf(json, "operator");
  session.reason = textOf(json, "reason");
  session.filament = textOf(json, "filament");
  session.printHours = optionalNumber(json, "print_hours");
  session.benchSeconds = optionalNumber(json, "bench_seconds").value_or(0.0);
  return session;
}

Json toJson(const StepRun& run) {
  Json json{{"step", run.step},
            {"subject", run.subject},
            {"inputs", run.inputs},
            {"notes", run.notes},
            {"state", run.accepted() ? "accepted" : "open"},
            {"accepted_on", run.acceptedOn},
            {"adopted", Json::array()}};
  for (const auto& adoption : run.adopted) {
    json["adopted"].push_back({{"setting", adoption.setting},
                               {"value", toJson(adoption.value)},
                               {"unit", adoption.unit},
                               {"u", number(adoption.u)},
                               {"U", number(adoption.U)},
                               {"date", adoption.date}});
  }
  return json;
}

StepRun runFromJson(const Json& json) {
  StepRun run;
  run.step = json.at("step").get<std::string>();
  run.subject = textOf(json, "subject");
  run.inputs = json.value("inputs", Json::object());
  run.notes = textOf(json, "notes");
  run.acceptedOn = textOf(json, "accepted_on");
  const Json adopted = json.value("adopted", Json::array());
  for (const auto& adoption : adopted) {
    run.adopted.push_back(adoptionFromJson(adoption));
  }
  return run;
}

Json toJson(const StepMark& mark) {
  return {{"step", mark.step},
          {"kind", mark.kind == StepMark::Kind::overridden ? "overridden" : "not-affected"},
          {"reason", mark.reason},
          {"date", mark.date}};
}

StepMark markFromJson(const Json& json) {
  StepMark mark;
  mark.step = json.at("step").get<std::string>();
  mark.kind = json.at("kind") == "overridden" ? StepMark::Kind::overridden : StepMark::Kind::notAffected;
  mark.reason = json.at("reason").get<std::string>();
  mark.date = textOf(json, "date");
  return mark;
}

}  // namespace fettle
