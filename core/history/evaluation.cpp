#include "core/history/evaluation.h"

#include <algorithm>

#include "core/history/settings_in_force.h"
#include "core/history/version.h"
#include "core/measure/text.h"
#include "core/steps/catalogue.h"
#include "core/steps/contract/shared_inputs.h"

namespace fettle {
namespace {

bool isRead(const Step& step, const std::string& id) {
  return std::any_of(step.reads.begin(), step.reads.end(),
                     [&](const std::string& pattern) { return matchesPattern(id, pattern); });
}

std::map<std::string, Quantity> signedQuantities(const StepRun& run) {
  Json given = Json::object();
  for (const auto& value : run.signedResult.value("quantities", Json::array())) {
    if (value.value("value", Json()).is_number()) {
      given[value.at("id").get<std::string>()] = value;
    }
  }
  return acceptedFromJson(given, run.step).value_or(std::map<std::string, Quantity>{});
}

/// What a step reads of the values of the last accepted run of every step (and subject) among the runs
/// begun before this one.
std::map<std::string, std::map<std::string, Quantity>> acceptedBefore(const History& history,
                                                                      const StepRun& run) {
  const Step* reader = findStep(run.step);
  if (!reader || reader->reads.empty()) {
    return {};
  }
  std::map<std::string, std::map<std::string, Quantity>> accepted;
  for (const auto& other : history.runs) {
    if (other.id >= run.id || other.step == run.step || !other.accepted() || other.session > run.session) {
      continue;
    }
    const auto take = [&](const std::string& id, const Quantity& quantity) {
      if (isRead(*reader, other.step + "." + id)) {
        accepted[other.step][id] = quantity;
      }
    };
    for (const auto& [id, quantity] : signedQuantities(other)) {
      take(id, quantity);
    }
    for (const auto& adoption : other.adopted) {
      if (adoption.value.number) {
        Quantity quantity = plainQuantity(*adoption.value.number, adoption.unit);
        quantity.u = adoption.u;
        take(adoption.setting, quantity);
      }
    }
  }
  return accepted;
}

Json tolerancesOf(const std::string& step, const std::map<std::string, Tolerance>& tolerances) {
  Json json = Json::object();
  for (const auto& [id, tolerance] : tolerances) {
    if (id.rfind(step + ".", 0) != 0) {
      continue;
    }
    json[id] = {tolerance.low ? Json(*tolerance.low) : Json(),
                tolerance.high ? Json(*tolerance.high) : Json()};
  }
  return json;
}

/// The keys of the machine sheet that a step reads; all of them for a step this program does not have.
Json sheetFor(const std::string& stepKey, const Json& sheet) {
  const Step* step = findStep(stepKey);
  Json read = Json::object();
  for (const auto& [key, value] : sheet.items()) {
    if (!step || step->readsSheetKey(key)) {
      read[key] = value;
    }
  }
  return read;
}

/// Whether a value that was known then is another one now, or gone.
bool hasChanged(const Json& then, const Json& now) {
  for (const auto& [key, value] : then.items()) {
    const auto found = now.find(key);
    const bool inside = value.is_object() && found != now.end() && found->is_object();
    if (inside ? hasChanged(value, *found) : found == now.end() || *found != value) {
      return true;
    }
  }
  return false;
}

}  // namespace

tl::expected<StepContext, std::string> contextFrom(const Json& snapshot) {
  auto sheet = readMachineSheet(snapshot.value("sheet", Json::object()));
  if (!sheet) {
    return tl::unexpected(sheet.error());
  }
  StepContext context;
  context.sheet = std::move(*sheet);
  const Json accepted = snapshot.value("accepted", Json::object());
  for (const auto& [step, values] : accepted.items()) {
    context.accepted[step] =
        acceptedFromJson(values, "accepted." + step).value_or(std::map<std::string, Quantity>{});
  }
  context.asFound =
      settingValuesFromJson(snapshot.value("as_found", Json::object())).value_or(SettingValues{});
  context.inForce =
      settingValuesFromJson(snapshot.value("in_force", Json::object())).value_or(SettingValues{});
  const Json tolerances = snapshot.value("tolerances", Json::object());
  for (const auto& [id, ends] : tolerances.items()) {
    const auto end = [&](std::size_t i) {
      return ends[i].is_number() ? std::optional(ends[i].get<double>()) : std::nullopt;
    };
    context.tolerances[id] = {end(0), end(1)};
  }
  return context;
}

Json snapshotFor(const History& history, const StepRun& run) {
  Json accepted = Json::object();
  for (const auto& [step, values] : acceptedBefore(history, run)) {
    accepted[step] = toJson(values);
  }
  return {{"sheet", sheetFor(run.step, history.machine.sheet)},
          {"as_found", toJson(asFoundFor(history, run))},
          {"in_force", toJson(run.inForce.empty() ? inForceFor(history, run) : run.inForce)},
          {"accepted", std::move(accepted)},
          {"tolerances", tolerancesOf(run.step, history.machine.tolerances)}};
}

std::string hashOf(const Json& inputs) {
  return sha256(inputs.dump());
}

PreparedRun prepareRun(const History& history, const StepRun& run) {
  return prepareFromSnapshot(run, snapshotFor(history, run));
}

PreparedRun prepareFromSnapshot(const StepRun& run, const Json& snapshot) {
  PreparedRun prepared;
  prepared.step = run.step;
  prepared.inputs = run.inputs;
  prepared.with = snapshot;
  if (auto context = contextFrom(snapshot)) {
    prepared.context = std::move(*context);
    prepared.context.subject = run.subject;
  } else {
    prepared.problem = context.error();
  }
  if (!findStep(run.step)) {
    prepared.problem =
        say(Text::tr("This program has no step {0}; its record is kept as it is."), run.step);
  }
  return prepared;
}

Evaluated evaluatePrepared(const PreparedRun& run, InputFiles& files,
                           std::function<bool(double)> progress) {
  Evaluated evaluated;
  evaluated.inputsHash = hashOf(run.inputs);
  evaluated.programVersion = programVersion();
  evaluated.with = run.with;
  evaluated.problem = run.problem;
  evaluated.result.step = run.step;
  evaluated.result.complete = false;
  if (!run.problem.empty()) {
    return evaluated;
  }
  StepContext context = run.context;
  context.progress = std::move(progress);
  auto result = findStep(run.step)->evaluate(run.inputs, std::move(context), files);
  if (result) {
    evaluated.result = std::move(*result);
  } else {
    evaluated.problem = result.error();
  }
  return evaluated;
}

Evaluated evaluateRun(const History& history, const StepRun& run, InputFiles& files) {
  return evaluatePrepared(prepareRun(history, run), files);
}

bool isCurrent(const Evaluated& evaluated, const StepRun& run) {
  return evaluated.inputsHash == hashOf(run.inputs);
}

bool usesOlderValues(const Evaluated& evaluated, const History& history, const StepRun& run) {
  if (evaluated.with.empty()) {
    return false;
  }
  const Json now = snapshotFor(history, run);
  const auto part = [](const Json& snapshot, const char* key) {
    return snapshot.value(key, Json::object());
  };
  // What the user typed counts as soon as it is there. What other runs bring counts once it changes: a
  // value that was not known when this run was evaluated speaks of another time.
  return part(evaluated.with, "sheet") != part(now, "sheet") ||
         part(evaluated.with, "tolerances") != part(now, "tolerances") ||
         hasChanged(part(evaluated.with, "as_found"), part(now, "as_found")) ||
         hasChanged(part(evaluated.with, "accepted"), part(now, "accepted"));
}

void evaluateAll(History& history, InputFiles& files) {
  const auto evaluate = [&](StepRun& run) {
    Evaluated evaluated = evaluateRun(history, run, files);
    if (run.accepted() && run.signedResult.empty() && evaluated.problem.empty()) {
      run.signedResult = signedForm(evaluated.result);
    }
    history.evaluated[run.id] = std::move(evaluated);
  };
  for (StepRun& run : history.runs) {
    evaluate(run);
  }
  for (StepRun& run : history.runs) {  // what a later run found on the controller was there before
    if (history.evaluated.at(run.id).with != snapshotFor(history, run)) {
      evaluate(run);
    }
  }
}

Json signedForm(const StepResult& result) {
  StepResult withoutCharts = result;
  withoutCharts.charts.clear();
  Json json = toJson(withoutCharts);
  json.erase("charts");
  return json;
}

}  // namespace fettle
