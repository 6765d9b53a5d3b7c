#include "core/history/settings_in_force.h"

#include <algorithm>
#include <map>

#include "core/steps/catalogue.h"

namespace fettle {
namespace {

struct Found {
  SettingValue value;
  std::string date;
};

std::map<std::string, Found> foundFor(const History& history, RecordId session) {
  std::map<std::string, Found> found;
  for (const auto& [id, delivered] : history.machine.asFound) {
    found[id] = {delivered.value, delivered.date};
  }
  for (const auto& run : history.runs) {
    if (run.session >= session) {
      continue;
    }
    for (const auto& adoption : run.adopted) {
      if (found[adoption.setting].date <= adoption.date) {
        found[adoption.setting] = {adoption.value, adoption.date};
      }
    }
  }
  return found;
}

const SettingDescription* description(const std::string& id) {
  const auto& known = knownSettings();
  const auto match = std::find_if(known.begin(), known.end(), [&](const SettingDescription& setting) {
    return matchesPattern(id, setting.id);
  });
  return match == known.end() ? nullptr : &*match;
}

SettingInForce named(const std::string& id) {
  SettingInForce setting;
  setting.id = id;
  if (const auto* known = description(id)) {
    const std::size_t dot = id.find('.');
    setting.label = known->label + (dot == std::string::npos ? "" : ", " + id.substr(0, dot));
    setting.unit = known->unit;
  } else {
    setting.label = id;
  }
  return setting;
}

}  // namespace

SettingValues asFoundFor(const History& history, RecordId session) {
  SettingValues values;
  for (const auto& [id, found] : foundFor(history, session)) {
    values[id] = found.value;
  }
  return values;
}

std::vector<SettingInForce> settingsInForce(const History& history, RecordId session) {
  std::map<std::string, SettingInForce> all;
  for (const auto& [id, found] : foundFor(history, session)) {
    all[id] = named(id);
    all[id].asFound = found.value;
    all[id].asFoundOn = found.date;
  }
  for (const auto& run : history.runs) {
    if (run.session != session) {
      continue;
    }
    for (const auto& adoption : run.adopted) {
      auto& setting = all.try_emplace(adoption.setting, named(adoption.setting)).first->second;
      if (!setting.asLeft || setting.asLeft->date <= adoption.date) {
        setting.asLeft = adoption;
        setting.step = run.step;
        setting.run = run.id;
      }
    }
  }
  std::vector<SettingInForce> list;
  for (auto& [id, setting] : all) {
    list.push_back(std::move(setting));
  }
  return list;
}

}  // namespace fettle
