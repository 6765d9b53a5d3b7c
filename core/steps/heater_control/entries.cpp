#include "core/steps/heater_control/entries.h"

#include <cmath>

namespace fettle {

bool NeededEntry::isRefused() const {
  return value && std::isnan(*value);
}

bool areEntered(StepResult& result, const std::vector<ResultId>& ids,
                const std::vector<NeededEntry>& entries) {
  std::vector<std::string> lacks, blank;
  for (const NeededEntry& entry : entries) {
    if (!entry.isThere()) {
      lacks.emplace_back(entry.path);
      if (!entry.isRefused()) {
        blank.emplace_back(entry.path);
      }
    }
  }
  if (lacks.empty()) {
    return true;
  }
  for (const ResultId& id : ids) {
    result.withhold(id, {});
    result.values.back().lacks = lacks;
  }
  result.want(blank);
  return false;
}

void withholdRefused(StepResult& result, const std::vector<ResultId>& ids, const std::string& why,
                     const std::string& at) {
  for (const ResultId& id : ids) {
    if (!result.find(id.id)) {
      result.withhold(id, why);
      result.values.back().lacks.push_back(at);
    }
  }
}

}  // namespace fettle
