#include "core/steps/contract/step_context.h"

#include "core/fields/accepted_numbers.h"
#include "core/steps/contract/step.h"

namespace fettle {

SettingValue StepContext::asFoundValue(const std::string& setting) const {
  const auto found = asFound.find(setting);
  return found == asFound.end() ? SettingValue{} : found->second;
}

std::optional<double> StepContext::asFoundNumber(const std::string& setting) const {
  const SettingValue value = asFoundValue(setting);
  if (!value.number && !value.text.empty()) {
    throw Refusal{wordForNumber(setting, value.text)};
  }
  return value.number;
}

std::optional<double> StepContext::acceptedNumber(const std::string& step, const std::string& id) const {
  const auto results = accepted.find(step);
  if (results == accepted.end()) {
    return std::nullopt;
  }
  const auto found = results->second.find(id);
  return found == results->second.end() ? std::nullopt : found->second.number;
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
