#include "core/steps/contract/result_list.h"

namespace fettle {

ResultDescription& ResultHandle::description() const {
  return m_list->m_results[m_index];
}

ResultHandle& ResultHandle::headline() {
  m_list->m_headlines.push_back(description().id);
  return *this;
}

ResultHandle& ResultHandle::judged() {
  description().judged = true;
  return *this;
}

ResultHandle& ResultHandle::within(std::optional<double> low, std::optional<double> high) {
  description().tolerance = {low, high};
  return judged();
}

ResultHandle& ResultHandle::words(std::vector<Choice> words) {
  description().words = std::move(words);
  return *this;
}

SettingDescription& SettingHandle::description() const {
  return m_list->m_settings[m_index];
}

SettingHandle& SettingHandle::disturbs(std::string partGroup) {
  description().disturbs = std::move(partGroup);
  return *this;
}

SettingHandle& SettingHandle::words(std::vector<Choice> words) {
  description().words = std::move(words);
  return *this;
}

void ResultList::name(const std::string& name, std::vector<Choice> choices) {
  m_choices[name] = std::move(choices);
}

ResultHandle ResultList::addResult(ResultDescription result) {
  m_results.push_back(std::move(result));
  return {*this, m_results.size() - 1};
}

SettingHandle ResultList::addSetting(SettingDescription setting) {
  m_settings.push_back(std::move(setting));
  return {*this, m_settings.size() - 1};
}

}  // namespace fettle
