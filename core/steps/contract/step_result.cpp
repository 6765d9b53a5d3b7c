#include "core/steps/contract/step_result.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "core/measure/text.h"

namespace fettle {
namespace {

bool isFinite(const Quantity& quantity) {
  const auto fine = [](const std::optional<double>& part) { return !part || std::isfinite(*part); };
  return std::isfinite(quantity.value) && fine(quantity.u) && fine(quantity.low) && fine(quantity.high) &&
         quantity.dof > 0;
}

}  // namespace

std::string severityKey(Severity severity) {
  switch (severity) {
    case Severity::fault:
      return "fault";
    case Severity::caution:
      return "caution";
    case Severity::note:
      break;
  }
  return "note";
}

Verdict StepResult::verdict() const {
  Verdict whole = Verdict::none;
  for (const auto& judged : judgements) {
    whole = worst(whole, judged.verdict);
  }
  return whole;
}

const ResultValue* StepResult::find(const std::string& id) const {
  const auto match =
      std::find_if(values.begin(), values.end(), [&](const auto& value) { return value.id == id; });
  return match == values.end() ? nullptr : &*match;
}

const Quantity* StepResult::quantity(const std::string& id) const {
  const ResultValue* value = find(id);
  return value && value->quantity ? &*value->quantity : nullptr;
}

const Judged* StepResult::judgement(const std::string& id) const {
  const auto match = std::find_if(judgements.begin(), judgements.end(),
                                  [&](const Judged& judged) { return judged.id == id; });
  return match == judgements.end() ? nullptr : &*match;
}

void StepResult::give(const ResultId& id, Quantity quantity) {
  if (quantity.unit != id.unit) {
    throw std::logic_error(id.id + " is given in " + quantity.unit + ", described in " + id.unit);
  }
  if (!isFinite(quantity)) {
    withhold(id, Text::tr("could not be computed from these readings"));
    return;
  }
  values.push_back({id.id, std::move(quantity), id.unit, {}, {}, id.names});
}

void StepResult::give(const ResultId& id, double value) {
  give(id, plainQuantity(value, id.unit));
}

void StepResult::give(const TextId& id, std::string text) {
  texts.push_back({id.id, std::move(text), id.names});
}

void StepResult::withhold(const ResultId& id, std::string why) {
  values.push_back({id.id, std::nullopt, id.unit, std::move(why), {}, id.names});
}

void StepResult::wantFor(const ResultId& id, const std::vector<std::string>& paths) {
  values.push_back({id.id, std::nullopt, id.unit, {}, paths, id.names});
  want(paths);
}

void StepResult::want(const std::vector<std::string>& paths) {
  for (const auto& path : paths) {
    if (std::find(missing.begin(), missing.end(), path) == missing.end()) {
      missing.push_back(path);
    }
  }
}

void StepResult::judge(const ResultId& id, const Judgement& judgement, const Tolerance& limit) {
  const auto isRefused = [](const std::optional<double>& end) { return end && !std::isfinite(*end); };
  if (isRefused(limit.low) || isRefused(limit.high)) {
    return;  // nothing is judged by an entry that was refused
  }
  judgements.push_back({id.id, judgement.verdict, limit, judgement.guardBand});
}

void StepResult::addFinding(std::string code, Severity severity, std::string text, std::string see,
                            std::string at) {
  // A sentence begins with a capital, unless with the name of an axis.
  if (text.size() > 1 && text[0] >= 'a' && text[0] <= 'z' && text[1] != ':' && text[1] != ' ') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
  findings.push_back({std::move(code), severity, std::move(text), std::move(see), std::move(at)});
}

void StepResult::propose(const SettingId& id, const Quantity& quantity) {
  if (isFinite(quantity)) {
    settings.push_back({id.id,
                        {},
                        {},
                        {quantity.value, {}},
                        quantity.unit,
                        quantity.u,
                        expandedUncertainty(quantity),
                        id.names});
  }
}

void StepResult::propose(const SettingId& id, std::string word) {
  settings.push_back(
      {id.id, {}, {}, {std::nullopt, std::move(word)}, {}, std::nullopt, std::nullopt, id.names});
}

void StepResult::refuse(const Refusal& refusal) {
  addFinding("refused", Severity::fault, refusal.sentence, {}, refusal.at);
}

bool StepResult::attempt(const std::vector<ResultId>& ids, const std::function<void()>& part) {
  try {
    part();
    return true;
  } catch (const Refusal& refusal) {
    refuse(refusal);
    complete = false;
    for (const auto& id : ids) {
      if (!find(id.id)) {
        withhold(id, refusal.sentence);
        values.back().lacks.push_back(refusal.at.empty() ? id.id : refusal.at);
      }
    }
    return false;
  }
}

}  // namespace fettle
