#include "core/steps/contract/shared_inputs.h"

#include "core/measure/text.h"

namespace fettle {
namespace {

void fillDefaults(const std::vector<Field>& fields, StepContext& context, const std::string& table = {}) {
  for (const auto& field : fields) {
    if (field.instrument) {
      context.instruments.try_emplace(field.key, *field.instrument);
      context.instruments.try_emplace(table + field.key, *field.instrument);
    }
    fillDefaults(field.columns, context, field.key + ".");
  }
}

tl::expected<void, std::string> choose(const std::string& column, const Json& given, StepContext& context) {
  const auto known = context.instruments.find(column);
  if (known == context.instruments.end()) {
    return tl::unexpected(say(Text::tr("instruments: no measured column is called {0}."), column));
  }
  Instrument instrument;
  instrument.unit = known->second.unit;
  instrument.name = given.is_object() && given.contains("name") && given["name"].is_string()
                        ? given["name"].get<std::string>()
                        : known->second.name;
  for (const auto& [key, member] : {std::pair{"r", &instrument.r}, std::pair{"e", &instrument.e}}) {
    if (!given.is_object() || !given.contains(key) || !given[key].is_number() ||
        given[key].get<double>() < 0) {
      return tl::unexpected(
          say(Text::tr("instruments: {0} needs a resolution r and a limit of error e, both "
                       "numbers of 0 or more in {1}."),
              column, instrument.unit));
    }
    *member = given[key].get<double>();
  }
  for (auto& [key, used] : context.instruments) {
    if (key == column || key.ends_with("." + column)) {
      used = instrument;
    }
  }
  return {};
}

}  // namespace

tl::expected<SettingValues, std::string> settingValuesFromJson(const Json& json, const std::string& what) {
  SettingValues values;
  if (!json.is_object()) {
    return tl::unexpected(say(Text::tr("{0}: an object {{id: value}} is needed."), what));
  }
  for (const auto& [setting, value] : json.items()) {
    if (value.is_number()) {
      values[setting] = {value.get<double>(), {}};
    } else if (value.is_string()) {
      values[setting] = {std::nullopt, value.get<std::string>()};
    } else if (!value.is_null()) {
      return tl::unexpected(
          say(Text::tr("{0}: {1} is {2}; a number or a text is needed."), what, setting, value.dump()));
    }
  }
  return values;
}

Json toJson(const SettingValues& values) {
  Json json = Json::object();
  for (const auto& [setting, value] : values) {
    if (!value.blank()) {
      json[setting] = value.number ? Json(*value.number) : Json(value.text);
    }
  }
  return json;
}

tl::expected<void, std::string> takeSharedInputs(const std::vector<Field>& fields, Json& inputs,
                                                 StepContext& context) {
  fillDefaults(fields, context);
  if (const auto found = inputs.find("as_found"); found != inputs.end()) {
    auto values = settingValuesFromJson(*found);
    if (!values) {
      return tl::unexpected(values.error());
    }
    for (auto& [setting, value] : *values) {
      context.asFound[setting] = value;
    }
    inputs.erase(found);
  }
  if (const auto found = inputs.find("instruments"); found != inputs.end()) {
    if (!found->is_object()) {
      return tl::unexpected(Text::tr("instruments: an object {column: {name, r, e}} is needed."));
    }
    for (const auto& [column, given] : found->items()) {
      if (auto chosen = choose(column, given, context); !chosen) {
        return chosen;
      }
    }
    inputs.erase(found);
  }
  return {};
}

}  // namespace fettle
