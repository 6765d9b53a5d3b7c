#include <cmath>

#include "core/steps/contract/shared_inputs.h"
#include "core/steps/contract/step_result.h"

namespace fettle {
namespace {

Json number(const std::optional<double>& value) {
  return value ? Json(*value) : Json();
}

std::optional<double> optionalNumber(const Json& json, const char* key) {
  const auto found = json.find(key);
  return found == json.end() || !found->is_number() ? std::nullopt : std::optional(found->get<double>());
}

/// Names are written only where there are some: most ids hold none.
void putNames(Json& json, const std::vector<std::string>& names) {
  if (!names.empty()) {
    json["names"] = names;
  }
}

std::vector<std::string> namesFrom(const Json& json) {
  return json.value("names", std::vector<std::string>{});
}

Json toJson(const ResultValue& value) {
  Json json{{"id", value.id}, {"unit", value.unit}};
  putNames(json, value.names);
  if (!value.quantity) {
    for (const char* key : {"value", "u", "U", "dof", "low", "high"}) {
      json[key] = nullptr;
    }
    json["why"] = value.why;
    if (!value.lacks.empty()) {
      json["lacks"] = value.lacks;
    }
    return json;
  }
  const Quantity& q = *value.quantity;
  json["value"] = q.value;
  json["u"] = number(q.u);
  json["U"] = number(expandedUncertainty(q));
  json["dof"] = q.u && std::isfinite(q.dof) ? Json(q.dof) : Json();
  json["low"] = number(q.low);
  json["high"] = number(q.high);
  return json;
}

ResultValue valueFromJson(const Json& json) {
  ResultValue value;
  value.id = json.at("id").get<std::string>();
  value.unit = json.at("unit").get<std::string>();
  value.names = namesFrom(json);
  if (!json.at("value").is_number()) {
    value.why = json.value("why", "");
    value.lacks = json.value("lacks", std::vector<std::string>{});
    return value;
  }
  Quantity quantity = plainQuantity(json.at("value").get<double>(), value.unit);
  quantity.u = optionalNumber(json, "u");
  quantity.dof = optionalNumber(json, "dof").value_or(infiniteDegreesOfFreedom);
  quantity.low = optionalNumber(json, "low");
  quantity.high = optionalNumber(json, "high");
  value.quantity = quantity;
  return value;
}

Json settingToJson(const SettingValue& value) {
  return value.number ? Json(*value.number) : value.text.empty() ? Json() : Json(value.text);
}

SettingValue settingFromJson(const Json& json, const char* key) {
  const Json value = json.value(key, Json());
  return {value.is_number() ? std::optional(value.get<double>()) : std::nullopt,
          value.is_string() ? value.get<std::string>() : std::string()};
}

/// A word that is proposed stands under "text" and leaves "proposed" null.
Json toJson(const SettingProposal& proposal) {
  Json json{{"id", proposal.id},
            {"unit", proposal.unit},
            {"as_found", settingToJson(proposal.asFound)},
            {"in_force", settingToJson(proposal.inForce)},
            {"proposed", number(proposal.proposed.number)},
            {"u", number(proposal.u)},
            {"U", number(proposal.U)}};
  putNames(json, proposal.names);
  if (!proposal.proposed.text.empty()) {
    json["text"] = proposal.proposed.text;
  }
  return json;
}

SettingProposal proposalFromJson(const Json& json) {
  SettingProposal proposal;
  proposal.id = json.at("id").get<std::string>();
  proposal.unit = json.value("unit", "");
  proposal.u = optionalNumber(json, "u");
  proposal.U = optionalNumber(json, "U");
  proposal.asFound = settingFromJson(json, "as_found");
  proposal.inForce = settingFromJson(json, "in_force");
  proposal.proposed = {optionalNumber(json, "proposed"), json.value("text", "")};
  proposal.names = namesFrom(json);
  return proposal;
}

Json toJson(const Judged& judged) {
  Json limit;
  if (judged.limit.low) {
    limit = {*judged.limit.low, number(judged.limit.high)};
  } else if (judged.limit.high) {
    limit = *judged.limit.high;
  }
  return {{"id", judged.id},
          {"verdict", verdictKey(judged.verdict)},
          {"limit", std::move(limit)},
          {"guard", judged.guard}};
}

Judged judgedFromJson(const Json& json) {
  Judged judged{
      json.at("id").get<std::string>(), verdictFromKey(json.at("verdict").get<std::string>()), {}, 0};
  const Json limit = json.value("limit", Json());
  if (limit.is_number()) {
    judged.limit.high = limit.get<double>();
  } else if (limit.is_array() && limit.size() == 2) {
    judged.limit.low = limit[0].get<double>();
    judged.limit.high = limit[1].is_number() ? std::optional(limit[1].get<double>()) : std::nullopt;
  }
  judged.guard = json.value("guard", 0.0);
  return judged;
}

Json toJson(const NextReading& next) {
  return {{"field", next.field}, {"count", next.count ? Json(*next.count) : Json()}, {"text", next.text}};
}

NextReading nextFromJson(const Json& json) {
  NextReading next{json.at("field").get<std::string>(), std::nullopt, json.value("text", "")};
  if (json.value("count", Json()).is_number()) {
    next.count = json["count"].get<int>();
  }
  return next;
}

Json toJson(const Finding& finding) {
  Json json{{"code", finding.code},
            {"severity", severityKey(finding.severity)},
            {"text", finding.text},
            {"see", finding.see}};
  if (!finding.at.empty()) {
    json["at"] = finding.at;
  }
  return json;
}

Severity severityFromKey(const std::string& key) {
  return key == "fault" ? Severity::fault : key == "caution" ? Severity::caution : Severity::note;
}

}  // namespace

Json toJson(const StepResult& result) {
  Json json{{"step", result.step},         {"complete", result.complete},
            {"missing", result.missing},   {"verdict", verdictKey(result.verdict())},
            {"judgements", Json::array()}, {"next", Json::array()},
            {"quantities", Json::array()}, {"texts", Json::object()},
            {"settings", Json::array()},   {"findings", Json::array()},
            {"charts", Json::array()}};
  for (const auto& judged : result.judgements) {
    json["judgements"].push_back(toJson(judged));
  }
  for (const auto& next : result.next) {
    json["next"].push_back(toJson(next));
  }
  for (const auto& value : result.values) {
    json["quantities"].push_back(toJson(value));
  }
  for (const auto& text : result.texts) {
    json["texts"][text.id] = text.text;
    if (!text.names.empty()) {
      json["text_names"][text.id] = text.names;
    }
  }
  for (const auto& proposal : result.settings) {
    json["settings"].push_back(toJson(proposal));
  }
  if (!result.found.empty()) {
    json["found"] = toJson(result.found);
  }
  for (const auto& finding : result.findings) {
    json["findings"].push_back(toJson(finding));
  }
  for (const auto& chart : result.charts) {
    json["charts"].push_back(toJson(chart));
  }
  return json;
}

std::vector<Finding> findingsFromJson(const Json& result) {
  std::vector<Finding> findings;
  for (const auto& finding : result.at("findings")) {
    findings.push_back({finding.at("code").get<std::string>(),
                        severityFromKey(finding.at("severity").get<std::string>()),
                        finding.at("text").get<std::string>(), finding.at("see").get<std::string>(),
                        finding.value("at", "")});
  }
  return findings;
}

StepResult resultFromJson(const Json& json) {
  StepResult result;
  result.step = json.at("step").get<std::string>();
  result.complete = json.at("complete").get<bool>();
  result.missing = json.at("missing").get<std::vector<std::string>>();
  for (const auto& judged : json.at("judgements")) {
    result.judgements.push_back(judgedFromJson(judged));
  }
  for (const auto& next : json.value("next", Json::array())) {
    result.next.push_back(nextFromJson(next));
  }
  for (const auto& value : json.at("quantities")) {
    result.values.push_back(valueFromJson(value));
  }
  const Json textNames = json.value("text_names", Json::object());
  for (const auto& [id, text] : json.at("texts").items()) {
    result.texts.push_back({id, text.get<std::string>(), textNames.value(id, std::vector<std::string>{})});
  }
  for (const auto& proposal : json.at("settings")) {
    result.settings.push_back(proposalFromJson(proposal));
  }
  if (const auto found = json.find("found"); found != json.end()) {
    result.found = settingValuesFromJson(*found).value_or(SettingValues{});
  }
  result.findings = findingsFromJson(json);
  for (const auto& chart : json.at("charts")) {
    result.charts.push_back(chartFromJson(chart));
  }
  return result;
}

}  // namespace fettle
