#include <filesystem>

#include "app/batch/verbs.h"
#include "core/history/evaluation.h"
#include "core/history/gates.h"
#include "core/intake/file_bytes.h"
#include "core/measure/text.h"
#include "core/steps/catalogue.h"
#include "core/steps/contract/shared_inputs.h"

namespace fettle::batch {
namespace {

const Step& stepNamed(const std::string& key) {
  const Step* step = findStep(key);
  if (!step) {
    std::string known;
    for (const auto& other : catalogue()) {
      known += (known.empty() ? "" : ", ") + other.key;
    }
    throw Failure{say(Text::tr("There is no step {0}; the steps are: {1}."), key, known)};
  }
  return *step;
}

/// A sheet with the values found and the accepted results it may carry.
StepContext contextFrom(const std::string& path) {
  StepContext context;
  if (path.empty()) {
    return context;
  }
  Json json = readJson(path);
  const auto take = [&](const char* key) {
    Json part = json.is_object() ? json.value(key, Json::object()) : Json::object();
    if (json.is_object()) {
      json.erase(key);
    }
    return part;
  };
  const Json accepted = take("accepted");
  if (!accepted.is_object()) {
    throw Failure{say(Text::tr("{0}: accepted: an object {{step: {{id: value}}}} is needed."), path)};
  }
  const auto settings = [&](const char* key, SettingValues& known) {
    auto values = settingValuesFromJson(take(key), key);
    if (!values) {
      throw Failure{path + ": " + values.error()};
    }
    known = std::move(*values);
  };
  settings("as_found", context.asFound);
  settings("in_force", context.inForce);
  for (const auto& [step, results] : accepted.items()) {
    const auto known = acceptedFromJson(results, "accepted." + step);
    if (!known) {
      throw Failure{path + ": " + known.error()};
    }
    context.accepted[step] = *known;
  }
  const bool nameless = json.is_object() && !json.contains("name");
  if (nameless) {
    json["name"] = "-";  // a sheet for one evaluation needs no name
  }
  std::vector<std::string> unknown;
  auto sheet = readMachineSheet(json, &unknown);
  if (!sheet) {
    throw Failure{path + ": " + sheet.error()};
  }
  if (!unknown.empty()) {
    throw Failure{say(Text::tr("{0}: a machine sheet has no field {1}."), path, unknown.front())};
  }
  context.sheet = std::move(*sheet);
  return context;
}

Json describeField(const Field& field) {
  Json json{{"key", field.key},
            {"label", field.label},
            {"kind", fieldKindKey(field.kind)},
            {"unit", field.unit},
            {"min", field.minimum ? Json(*field.minimum) : Json()},
            {"max", field.maximum ? Json(*field.maximum) : Json()},
            {"choices", Json::array()},
            {"columns", Json::array()},
            {"required", field.required},
            {"help", field.help},
            {"default", field.fallback},
            {"group", field.group},
            {"carries_over", field.carriesOver}};
  for (const auto& choice : field.choices) {
    json["choices"].push_back(choice.key);
  }
  for (const auto& column : field.columns) {
    json["columns"].push_back(describeField(column));
  }
  if (field.instrument) {
    json["instrument"] = {
        {"name", field.instrument->name}, {"r", field.instrument->r}, {"e", field.instrument->e}};
  }
  if (field.condition) {
    json["only_when"] = {{"field", field.condition->field}, {"values", field.condition->values}};
  }
  if (field.requiredWhen) {
    json["required_when"] = {{"field", field.requiredWhen->field}, {"values", field.requiredWhen->values}};
  }
  if (!field.alternatives.empty()) {
    json["or"] = field.alternatives;
  }
  return json;
}

Json describeStep(const Step& step) {
  Json json{{"step", step.key},
            {"name", step.name},
            {"purpose", step.purpose},
            {"heats", step.heats},
            {"moves", step.moves},
            {"bench_minutes", step.benchMinutes},
            {"wait_minutes", step.waitMinutes},
            {"headline", step.headline},
            {"fields", Json::array()},
            {"results", Json::array()},
            {"settings", Json::array()}};
  for (const auto& field : step.fields) {
    json["fields"].push_back(describeField(field));
  }
  for (const auto& result : step.results) {
    json["results"].push_back({{"id", result.id}, {"unit", result.unit}, {"label", result.label}});
  }
  for (const auto& setting : step.settings) {
    json["settings"].push_back({{"id", setting.id}, {"unit", setting.unit}, {"label", setting.label}});
  }
  return json;
}

}  // namespace

std::string describe(const std::string& step) {
  if (!step.empty()) {
    return describeStep(stepNamed(step)).dump(2);
  }
  Json all = Json::array();
  for (const auto& known : catalogue()) {
    all.push_back(describeStep(known));
  }
  return all.dump(2);
}

std::string evaluate(const std::string& key, const std::string& inputs, const std::string& sheet) {
  const Step& step = stepNamed(key);
  const StepContext context = contextFrom(sheet);
  const std::filesystem::path folder = inputs == "-" ? "." : std::filesystem::path(inputs).parent_path();
  IntakeFiles files([&](const Json& reference) -> tl::expected<std::string, std::string> {
    const std::filesystem::path named =
        reference["file"].is_string() ? reference["file"].get<std::string>() : "";
    auto bytes = readFileBytes(named.is_absolute() ? named : folder / named);
    if (!bytes) {
      return tl::unexpected(bytes.error().sentence);
    }
    return std::move(*bytes);
  });
  auto result = step.evaluate(readJson(inputs), context, files);
  if (!result) {
    throw Failure{result.error()};
  }
  if (const auto gate = closedGate(context, step)) {  // said, and computed all the same
    result->addFinding("blocked", Severity::caution, gate->sentence, gate->waitsFor);
  }
  return toJson(*result).dump(2);
}

}  // namespace fettle::batch
