#include "core/history/settings_in_force.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "core/steps/catalogue.h"
#include "core/steps/contract/machine_sheet.h"
#include "core/steps/contract/wording.h"

namespace fettle {
namespace {

struct Found {
  SettingValue value;
  std::string date;
  RecordId readIn = 0;  ///< session in which it was read off the controller; 0: not read
};

/// What is known as found, by setting. A value of the same date or later takes the place of an earlier one;
/// what a session adopted also that of what it read, which was there on arrival, whenever that was
/// accepted.
class FoundValues {
 public:
  void take(const std::string& id, Found value) {
    if (Found& known = m_found[id]; known.date <= value.date) {
      known = std::move(value);
    }
  }
  void takeAdopted(const Adoption& adoption, RecordId session) {
    Found& known = m_found[adoption.setting];
    if (known.date <= adoption.date || known.readIn == session) {
      known = {adoption.value, adoption.date};
    }
  }
  std::map<std::string, Found> taken() && { return std::move(m_found); }

 private:
  std::map<std::string, Found> m_found;
};

/// The runs whose readings of the controller count: of each session, step and subject the last accepted
/// one.
std::vector<const StepRun*> readingRuns(const History& history, const StepRun* reader, RecordId session) {
  std::map<std::tuple<RecordId, std::string, std::string>, const StepRun*> last;
  for (const auto& run : history.runs) {
    const bool ofReader = reader && run.step == reader->step && run.session == reader->session;
    if (run.accepted() && run.session <= session && !ofReader) {
      last[{run.session, run.step, run.subject}] = &run;
    }
  }
  std::vector<const StepRun*> runs;
  for (const auto& [key, run] : last) {
    runs.push_back(run);
  }
  return runs;
}

void takeReadings(const History& history, const StepRun* reader, RecordId session, FoundValues& found) {
  for (const StepRun* run : readingRuns(history, reader, session)) {
    if (const auto evaluated = history.evaluated.find(run->id); evaluated != history.evaluated.end()) {
      for (const auto& [id, value] : evaluated->second.result.found) {
        found.take(id, {value, run->acceptedOn, run->session});
      }
    }
  }
}

/// @param reader the run that will see the values, if one does
std::map<std::string, Found> foundFor(const History& history, RecordId session, const StepRun* reader) {
  FoundValues found;
  for (const auto& [id, delivered] : history.machine.asFound) {
    found.take(id, {delivered.value, delivered.date});
  }
  takeReadings(history, reader, session, found);
  for (const auto& run : history.runs) {
    if (run.session >= session) {
      continue;
    }
    for (const auto& adoption : run.adopted) {
      found.takeAdopted(adoption, run.session);
    }
  }
  return std::move(found).taken();
}

SettingValues valuesOf(const std::map<std::string, Found>& all) {
  SettingValues values;
  for (const auto& [id, found] : all) {
    values[id] = found.value;
  }
  return values;
}

/// Says the setting as the first step does that knows it, else as the machine sheet does.
SettingInForce named(const std::string& id) {
  SettingInForce setting;
  setting.id = setting.label = id;
  for (const auto& step : catalogue()) {
    const auto known = std::find_if(step.settings.begin(), step.settings.end(),
                                    [&](const auto& one) { return matchesPattern(id, one.id); });
    if (known != step.settings.end()) {
      setting.label = Wording(step).label(id);
      setting.unit = known->unit;
      return setting;
    }
  }
  if (const Field* ofSheet = findField(machineSheetFields(), id)) {
    setting.label = ofSheet->label;
    setting.unit = ofSheet->unit;
  }
  return setting;
}

}  // namespace

SettingValues asFoundFor(const History& history, RecordId session) {
  return valuesOf(foundFor(history, session, nullptr));
}

SettingValues asFoundFor(const History& history, const StepRun& reader) {
  return valuesOf(foundFor(history, reader.session, &reader));
}

SettingValues inForceFor(const History& history, const StepRun& run) {
  SettingValues known = asFoundFor(history, run);
  for (const auto& other : history.runs) {
    if (other.session == run.session && other.id < run.id) {
      for (const auto& adoption : other.adopted) {
        known[adoption.setting] = adoption.value;
      }
    }
  }
  const Step* step = findStep(run.step);
  std::erase_if(known, [&](const auto& value) { return !step || !step->setting(value.first); });
  return known;
}

std::vector<SettingInForce> settingsInForce(const History& history, RecordId session) {
  std::map<std::string, SettingInForce> all;
  for (const auto& [id, found] : foundFor(history, session, nullptr)) {
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
