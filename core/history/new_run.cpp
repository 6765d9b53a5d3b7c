#include "core/history/new_run.h"

#include <algorithm>

#include "core/history/part_groups.h"
#include "core/history/settings_in_force.h"
#include "core/steps/catalogue.h"

namespace fettle {
namespace {

const StepRun* lastRun(const History& history, const std::string& step, const std::string& subject) {
  const auto last = std::find_if(history.runs.rbegin(), history.runs.rend(), [&](const StepRun& run) {
    return run.step == step && run.subject == subject && !run.inputs.empty();
  });
  return last == history.runs.rend() ? nullptr : &*last;
}

bool touches(const PartGroup* group, const std::string& step) {
  return group && std::find(group->due.begin(), group->due.end(), step) != group->due.end();
}

/// Whether a part or a setting of the step was changed since a run of it. Records carry rising ids, so what
/// has a greater one came later, whatever the clock said.
bool wasChangedSince(const History& history, const StepRun& run) {
  const Step* step = findStep(run.step);
  const auto concerns = [&](const Adoption& adoption) {
    return (step && step->setting(adoption.setting)) ||
           touches(groupOfAdoption(adoption.setting), run.step);
  };
  const bool part =
      std::any_of(history.changes.begin(), history.changes.end(), [&](const PartChange& change) {
        return change.id > run.id && touches(findPartGroup(change.group), run.step);
      });
  return part || std::any_of(history.runs.begin(), history.runs.end(), [&](const StepRun& other) {
           return other.id >= run.id && std::any_of(other.adopted.begin(), other.adopted.end(), concerns);
         });
}

}  // namespace

RunRole roleOfNewRun(const History& history, const std::string& step, const std::string& subject) {
  const StepRun* before = lastRun(history, step, subject);
  if (!before) {
    return RunRole::arrival;
  }
  return wasChangedSince(history, *before) ? RunRole::corrected : RunRole::repeat;
}

Json carriedOver(const History& history, const std::string& step, const std::string& subject) {
  Json inputs = Json::object();
  const StepRun* before = lastRun(history, step, subject);
  const Step* known = findStep(step);
  if (!before || !known) {
    return inputs;
  }
  for (const auto& field : known->fields) {
    if (const auto value = before->inputs.find(field.key);
        field.carriesOver && value != before->inputs.end()) {
      inputs[field.key] = *value;
    }
  }
  return inputs;
}

void noteMeasuring(const History& history, StepRun& run, const std::string& now) {
  if (run.measuredOn.empty()) {
    run.measuredOn = now;
    run.inForce = inForceFor(history, run);
  }
}

void setEntry(StepRun& run, const std::string& key, const Json& value) {
  if (value.is_null()) {
    run.inputs.erase(key);
  } else {
    run.inputs[key] = value;
  }
}

}  // namespace fettle
