#include "core/steps/contract/step_result.h"

#include <algorithm>
#include <cmath>

#include "core/measure/text.h"
#include "core/steps/contract/shared_inputs.h"

namespace fettle {
namespace {

bool isFinite(const Quantity& quantity) {
  const auto fine = [](const std::optional<double>& part) { return !part || std::isfinite(*part); };
  return std::isfinite(quantity.value) && fine(quantity.u) && fine(quantity.low) && fine(quantity.high) &&
         quantity.dof > 0;
}

Json number(const std::optional<double>& value) {
  return value ? Json(*value) : Json();
}

std::optional<double> optionalNumber(const Json& json, const char* key) {
  const auto found = json.find(key);
  return found == json.end() || !found->is_number() ? std::nullopt : std::optional(found->get<double>());
}

Json toJson(const ResultValue& value) {
  Json json{{"id", value.id}, {"unit", value.unit}};
  if (!value.quantity) {
    json["value"] = nullptr;
    json["why"] = value.why;
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
  if (!json.at("value").is_number()) {
    value.why = json.value("why", "");
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

void putSettingValue(Json& json, const char* numberKey, const SettingValue& value) {
  json[numberKey] = number(value.number);
  if (!value.text.empty()) {
    json[numberKey] = nullptr;
    json[std::string(numberKey) == "proposed" ? "text" : "as_found_text"] = value.text;
  }
}

Json toJson(const SettingProposal& proposal) {
  Json json{
      {"id", proposal.id}, {"unit", proposal.unit}, {"u", number(proposal.u)}, {"U", number(proposal.U)}};
  putSettingValue(json, "as_found", proposal.asFound);
  putSettingValue(json, "proposed", proposal.proposed);
  return json;
}

SettingProposal proposalFromJson(const Json& json) {
  SettingProposal proposal;
  proposal.id = json.at("id").get<std::string>();
  proposal.unit = json.value("unit", "");
  proposal.u = optionalNumber(json, "u");
  proposal.U = optionalNumber(json, "U");
  proposal.asFound = {optionalNumber(json, "as_found"), json.value("as_found_text", "")};
  proposal.proposed = {optionalNumber(json, "proposed"), json.value("text", "")};
  return proposal;
}

Severity severityFromKey(const std::string& key) {
  return key == "fault" ? Severity::fault : key == "caution" ? Severity::caution : Severity::note;
}

}  // namespace

std::string severityKey(Severity severity) {
  switch (severity) {
    case Severity::fault:
      return "fault";
    case Severity::caution:
      return "caution";
    case Severity::note:
      break;
  }
  return "note";
}

Verdict StepResult::verdict() const {
  Verdict whole = Verdict::none;
  for (const auto& [id, verdict] : verdicts) {
    whole = worst(whole, verdict);
  }
  return whole;
}

const ResultValue* StepResult::find(const std::string& id) const {
  const auto match =
      std::find_if(values.begin(), values.end(), [&](const auto& value) { return value.id == id; });
  return match == values.end() ? nullptr : &*match;
}

const Quantity* StepResult::quantity(const std::string& id) const {
  const ResultValue* value = find(id);
  return value && value->quantity ? &*value->quantity : nullptr;
}

void StepResult::give(std::string id, Quantity quantity) {
  if (!isFinite(quantity)) {
    withhold(std::move(id), quantity.unit, Text::tr("could not be computed from these readings"));
    return;
  }
  std::string unit = quantity.unit;
  values.push_back({std::move(id), std::move(quantity), std::move(unit), {}});
}

void StepResult::give(std::string id, double value, std::string unit) {
  give(std::move(id), plainQuantity(value, std::move(unit)));
}

void StepResult::withhold(std::string id, std::string unit, std::string why) {
  values.push_back({std::move(id), std::nullopt, std::move(unit), std::move(why)});
}

void StepResult::say(std::string id, std::string text) {
  texts.emplace_back(std::move(id), std::move(text));
}

void StepResult::find(std::string code, Severity severity, std::string text, std::string see) {
  // A sentence begins with a capital, unless with the name of an axis.
  if (text.size() > 1 && text[0] >= 'a' && text[0] <= 'z' && text[1] != ':' && text[1] != ' ') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
  findings.push_back({std::move(code), severity, std::move(text), std::move(see)});
}

void StepResult::propose(std::string id, const SettingValue& asFound, const Quantity& quantity) {
  if (!isFinite(quantity)) {
    return;
  }
  settings.push_back({std::move(id),
                      asFound,
                      {quantity.value, {}},
                      quantity.unit,
                      quantity.u,
                      expandedUncertainty(quantity)});
}

void StepResult::proposeWord(std::string id, const SettingValue& asFound, std::string word) {
  settings.push_back(
      {std::move(id), asFound, {std::nullopt, std::move(word)}, {}, std::nullopt, std::nullopt});
}

Json toJson(const StepResult& result) {
  Json json{{"step", result.step},        {"complete", result.complete},
            {"missing", result.missing},  {"verdict", verdictKey(result.verdict())},
            {"verdicts", Json::object()}, {"quantities", Json::array()},
            {"texts", Json::object()},    {"settings", Json::array()},
            {"findings", Json::array()},  {"charts", Json::array()}};
  for (const auto& [id, verdict] : result.verdicts) {
    json["verdicts"][id] = verdictKey(verdict);
  }
  for (const auto& value : result.values) {
    json["quantities"].push_back(toJson(value));
  }
  for (const auto& [id, text] : result.texts) {
    json["texts"][id] = text;
  }
  for (const auto& proposal : result.settings) {
    json["settings"].push_back(toJson(proposal));
  }
  if (!result.found.empty()) {
    json["found"] = toJson(result.found);
  }
  for (const auto& finding : result.findings) {
    json["findings"].push_back({{"code", finding.code},
                                {"severity", severityKey(finding.severity)},
                                {"text", finding.text},
                                {"see", finding.see}});
  }
  for (const auto& chart : result.charts) {
    json["charts"].push_back(toJson(chart));
  }
  return json;
}

StepResult resultFromJson(const Json& json) {
  StepResult result;
  result.step = json.at("step").get<std::string>();
  result.complete = json.at("complete").get<bool>();
  result.missing = json.at("missing").get<std::vector<std::string>>();
  for (const auto& [id, verdict] : json.at("verdicts").items()) {
    result.verdicts[id] = verdictFromKey(verdict.get<std::string>());
  }
  for (const auto& value : json.at("quantities")) {
    result.values.push_back(valueFromJson(value));
  }
  for (const auto& [id, text] : json.at("texts").items()) {
    result.texts.emplace_back(id, text.get<std::string>());
  }
  for (const auto& proposal : json.at("settings")) {
    result.settings.push_back(proposalFromJson(proposal));
  }
  if (const auto found = json.find("found"); found != json.end()) {
    result.found = settingValuesFromJson(*found).value_or(SettingValues{});
  }
  for (const auto& finding : json.at("findings")) {
    result.findings.push_back(
        {finding.at("code").get<std::string>(), severityFromKey(finding.at("severity").get<std::string>()),
         finding.at("text").get<std::string>(), finding.at("see").get<std::string>()});
  }
  for (const auto& chart : json.at("charts")) {
    result.charts.push_back(chartFromJson(chart));
  }
  return result;
}

}  // namespace fettle
