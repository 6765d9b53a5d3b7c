#include "core/steps/contract/step_context.h"

#include "core/fields/accepted_numbers.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

namespace {

std::optional<double> numberOf(const std::string& setting, const SettingValue& value) {
  if (!value.number && !value.text.empty()) {
    throw Refusal{wordForNumber(setting, value.text), "as_found." + setting};
  }
  return value.number;
}

}  // namespace

SettingValue StepContext::asFoundValue(const std::string& setting) const {
  const auto found = asFound.find(setting);
  return found == asFound.end() ? SettingValue{} : found->second;
}

std::optional<double> StepContext::asFoundNumber(const std::string& setting) const {
  return numberOf(setting, asFoundValue(setting));
}

SettingValue StepContext::inForceValue(const SettingId& setting) const {
  const auto found = inForce.find(setting.id);
  return found == inForce.end() || found->second.blank() ? asFoundValue(setting.id) : found->second;
}

std::optional<double> StepContext::inForceNumber(const SettingId& setting) const {
  return numberOf(setting.id, inForceValue(setting));
}

std::optional<Quantity> StepContext::acceptedQuantity(const std::string& step,
                                                      const std::string& id) const {
  const auto results = accepted.find(step);
  if (results == accepted.end()) {
    return std::nullopt;
  }
  const auto found = results->second.find(id);
  return found == results->second.end() ? std::nullopt : std::optional(found->second);
}

std::optional<double> StepContext::acceptedNumber(const std::string& step, const std::string& id) const {
  const auto quantity = acceptedQuantity(step, id);
  return quantity ? std::optional(quantity->value) : std::nullopt;
}

std::optional<Tolerance> StepContext::changedTolerance(const std::string& judged) const {
  if (const auto exact = tolerances.find(judged); exact != tolerances.end()) {
    return exact->second;
  }
  for (const auto& [pattern, tolerance] : tolerances) {
    if (matchesPattern(judged, pattern)) {
      return tolerance;
    }
  }
  return std::nullopt;
}

const Instrument& StepContext::instrument(const std::string& column) const {
  return instruments.at(column);
}

}  // namespace fettle
