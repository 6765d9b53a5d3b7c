#include "core/steps/contract/step_context.h"

namespace fettle {

SettingValue StepContext::asFoundValue(const std::string& setting) const {
  const auto found = asFound.find(setting);
  return found == asFound.end() ? SettingValue{} : found->second;
}

std::optional<double> StepContext::asFoundNumber(const std::string& setting) const {
  return asFoundValue(setting).number;
}

std::optional<double> StepContext::acceptedNumber(const std::string& step, const std::string& id) const {
  const auto results = accepted.find(step);
  if (results == accepted.end()) {
    return std::nullopt;
  }
  const auto found = results->second.find(id);
  return found == results->second.end() ? std::nullopt : found->second.number;
}

const Instrument& StepContext::instrument(const std::string& column) const {
  return instruments.at(column);
}

}  // namespace fettle
