#include "core/history/evaluation.h"

#include <set>

#include "core/history/settings_in_force.h"
#include "core/history/version.h"
#include "core/measure/text.h"
#include "core/steps/catalogue.h"
#include "core/steps/shared_inputs.h"

namespace fettle {
namespace {

/// Values of the last accepted run of every step (and subject) before this run.
std::map<std::string, SettingValues> acceptedBefore(const History& history, const StepRun& run) {
  std::map<std::string, SettingValues> accepted;
  for (const auto& other : history.runs) {
    const auto evaluated = history.evaluated.find(other.id);
    if (other.id == run.id || other.step == run.step || !other.accepted() || other.session > run.session ||
        evaluated == history.evaluated.end()) {
      continue;
    }
    for (const auto& value : evaluated->second.result.values) {
      if (value.quantity) {
        accepted[other.step][value.id] = {value.quantity->value, {}};
      }
    }
    for (const auto& [id, text] : evaluated->second.result.texts) {
      accepted[other.step][id] = {std::nullopt, text};
    }
    for (const auto& adoption : other.adopted) {
      accepted[other.step][adoption.setting] = adoption.value;
    }
  }
  return accepted;
}

Json tolerancesToJson(const std::map<std::string, Tolerance>& tolerances) {
  Json json = Json::object();
  for (const auto& [id, tolerance] : tolerances) {
    json[id] = {tolerance.low ? Json(*tolerance.low) : Json(),
                tolerance.high ? Json(*tolerance.high) : Json()};
  }
  return json;
}

}  // namespace

tl::expected<StepContext, std::string> contextFor(const History& history, const StepRun& run) {
  auto sheet = readMachineSheet(history.machine.sheet);
  if (!sheet) {
    return tl::unexpected(sheet.error());
  }
  StepContext context;
  context.sheet = std::move(*sheet);
  context.asFound = asFoundFor(history, run.session);
  context.accepted = acceptedBefore(history, run);
  context.tolerances = history.machine.tolerances;
  context.subject = run.subject;
  return context;
}

Json snapshotFor(const History& history, const StepRun& run) {
  Json accepted = Json::object();
  for (const auto& [step, values] : acceptedBefore(history, run)) {
    accepted[step] = toJson(values);
  }
  return {{"sheet", history.machine.sheet},
          {"as_found", toJson(asFoundFor(history, run.session))},
          {"accepted", std::move(accepted)},
          {"tolerances", tolerancesToJson(history.machine.tolerances)}};
}

std::string hashOf(const Json& inputs) {
  return sha256(inputs.dump());
}

Evaluated evaluateRun(const History& history, const StepRun& run, InputFiles& files,
                      std::function<bool(double)> progress) {
  Evaluated evaluated;
  evaluated.inputsHash = hashOf(run.inputs);
  evaluated.programVersion = programVersion();
  evaluated.with = snapshotFor(history, run);
  evaluated.result.step = run.step;
  evaluated.result.complete = false;
  const Step* step = findStep(run.step);
  auto context = contextFor(history, run);
  if (!step || !context) {
    evaluated.problem =
        step ? context.error()
             : say(Text::tr("This program has no step {0}; its record is kept as it is."), run.step);
    return evaluated;
  }
  context->progress = std::move(progress);
  auto result = step->evaluate(run.inputs, std::move(*context), files);
  if (result) {
    evaluated.result = std::move(*result);
  } else {
    evaluated.problem = result.error();
  }
  return evaluated;
}

bool isCurrent(const Evaluated& evaluated, const StepRun& run) {
  return evaluated.inputsHash == hashOf(run.inputs);
}

bool usesOlderValues(const Evaluated& evaluated, const History& history, const StepRun& run) {
  return !evaluated.with.empty() && evaluated.with != snapshotFor(history, run);
}

}  // namespace fettle
