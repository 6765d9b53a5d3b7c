#include "core/steps/contract/step.h"

#include <algorithm>
#include <set>

#include "core/fields/accepted_numbers.h"
#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
std::string guardBandsFill(const std::string& what, const std::string& unit, const Judgement& judgement,
                           double width) {
  return say(Text::tr("{0}: the guard bands of 2 × {1} fill the tolerance of {2}; no reading could pass."),
             what, formatQuantity(plainQuantity(judgement.guardBand, unit)),
             formatQuantity(plainQuantity(width, unit)));
}

std::string tooCoarseSentence(const std::string& what, const std::string& unit, const Judgement& judgement,
                              double width, const Instrument* used) {
  std::string text = guardBandsFill(what, unit, judgement, width);
  auto better = instrumentThatWouldDo(width, unit);
  if (better && used && better->standardUncertainty(0) >= used->standardUncertainty(0)) {
    better.reset();  // what fills the tolerance is the scatter
  }
  text += ' ';
  text += better ? say(Text::tr("A {0} (limit of error {1}) would do."), better->name,
                       formatQuantity(plainQuantity(better->e, unit)))
          : used ? Text::tr("More readings would do.")
                 : Text::tr("More readings, or an instrument with a smaller limit of error, would do.");
  return text;
}

std::string stageName(Stage stage) {
  switch (stage) {
    case Stage::makeSafe:
      return Text::tr("Make safe");
    case Stage::heat:
      return Text::tr("Heat");
    case Stage::motion:
      return Text::tr("Motion");
    case Stage::bed:
      return Text::tr("Bed");
    case Stage::plastic:
      return Text::tr("Plastic");
    case Stage::limitsAndProof:
      return Text::tr("Limits and proof");
  }
  return {};
}

const ResultDescription* Step::describe(const std::string& resultId) const {
  const auto found = std::find_if(results.begin(), results.end(), [&](const ResultDescription& result) {
    return matchesPattern(resultId, result.id);
  });
  return found == results.end() ? nullptr : &*found;
}

const SettingDescription* Step::setting(const std::string& settingId) const {
  const auto found = std::find_if(settings.begin(), settings.end(), [&](const SettingDescription& setting) {
    return matchesPattern(settingId, setting.id);
  });
  return found == settings.end() ? nullptr : &*found;
}

bool Step::readsSheetKey(const std::string& sheetKey) const {
  const std::size_t dot = sheetKey.find('.');
  const std::string ofEveryAxis = dot == std::string::npos ? std::string() : "*" + sheetKey.substr(dot);
  return std::any_of(readsSheet.begin(), readsSheet.end(), [&](const std::string& declared) {
    return declared == sheetKey || (!ofEveryAxis.empty() && declared == ofEveryAxis);
  });
}

Tolerance toleranceOf(const Step& step, const StepContext& context, const std::string& resultId) {
  if (const auto changed = context.changedTolerance(step.key + "." + resultId)) {
    return *changed;
  }
  const ResultDescription* described = step.describe(resultId);
  return described ? described->tolerance : Tolerance{};
}

void judgeResults(const Step& step, const StepContext& context, StepResult& result) {
  for (const auto& value : result.values) {
    const ResultDescription* described = step.describe(value.id);
    if (!described || !described->judged || !value.quantity || result.judgement(value.id)) {
      continue;
    }
    const Tolerance tolerance = toleranceOf(step, context, value.id);
    const Judgement judgement = judge(*value.quantity, tolerance);
    result.judgements.push_back({value.id, judgement.verdict, tolerance, judgement.guardBand});
    if (judgement.tooCoarse) {
      const double width = *tolerance.high - *tolerance.low;
      result.addFinding("instrument-too-coarse", Severity::caution,
                        tooCoarseSentence(described->label, value.quantity->unit, judgement, width));
    }
  }
}

}  // namespace fettle
