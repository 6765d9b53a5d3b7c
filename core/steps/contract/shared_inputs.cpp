#include "core/steps/contract/shared_inputs.h"

#include <cmath>

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

namespace {

std::optional<double> numberAt(const Json& json, const char* key) {
  const auto found = json.find(key);
  return found != json.end() && found->is_number() ? std::optional(found->get<double>()) : std::nullopt;
}

}  // namespace

tl::expected<std::map<std::string, Quantity>, std::string> acceptedFromJson(const Json& json,
                                                                            const std::string& what) {
  std::map<std::string, Quantity> accepted;
  if (!json.is_object()) {
    return tl::unexpected(say(Text::tr("{0}: an object {{id: value}} is needed."), what));
  }
  for (const auto& [id, given] : json.items()) {
    const auto value = given.is_object()   ? numberAt(given, "value")
                       : given.is_number() ? std::optional(given.get<double>())
                                           : std::nullopt;
    if (!value) {
      return tl::unexpected(say(Text::tr("{0}.{1}: {2} is not a number, nor an object with a value."), what,
                                id, given.dump()));
    }
    Quantity quantity = plainQuantity(*value, given.is_object() ? given.value("unit", "") : "");
    if (given.is_object()) {
      quantity.u = numberAt(given, "u");
      quantity.dof = numberAt(given, "dof").value_or(infiniteDegreesOfFreedom);
      quantity.low = numberAt(given, "low");
      quantity.high = numberAt(given, "high");
    }
    accepted[id] = quantity;
  }
  return accepted;
}

Json toJson(const std::map<std::string, Quantity>& accepted) {
  Json json = Json::object();
  const auto number = [](const std::optional<double>& value) { return value ? Json(*value) : Json(); };
  for (const auto& [id, quantity] : accepted) {
    json[id] = {{"value", quantity.value},
                {"unit", quantity.unit},
                {"u", number(quantity.u)},
                {"U", number(expandedUncertainty(quantity))},
                {"dof", quantity.u && std::isfinite(quantity.dof) ? Json(quantity.dof) : Json()},
                {"low", number(quantity.low)},
                {"high", number(quantity.high)}};
  }
  return json;
}

tl::expected<void, std::string> takeSharedInputs(const std::vector<Field>& fields, Json& inputs,
                                                 StepContext& context) {
  fillDefaults(fields, context);
  for (const auto& [key, known] :
       {std::pair{"as_found", &context.asFound}, std::pair{"in_force", &context.inForce}}) {
    const auto found = inputs.find(key);
    if (found == inputs.end()) {
      continue;
    }
    auto values = settingValuesFromJson(*found, key);
    if (!values) {
      return tl::unexpected(values.error());
    }
    for (auto& [setting, value] : *values) {
      (*known)[setting] = value;
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
