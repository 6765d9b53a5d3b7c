#include "core/steps/resonance.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/measure/text.h"
#include "core/steps/contract/result_name.h"
#include "core/steps/resonance/axis.h"
#include "core/steps/resonance/capture.h"
#include "core/steps/resonance/charts.h"
#include "core/steps/resonance/results.h"

namespace fettle {
namespace {

/// Cells of all time–frequency pictures of a result together, and of one: charts are stored.
constexpr std::size_t allPictureCells = 36000;
constexpr std::size_t mostPictureCells = 12000;

/// Share of the work that the captures are; the rest is the choice of shapers.
constexpr double captureShare = 0.8;

/// The part from `from` to `to` of the whole work.
maths::Progress partOf(const std::function<bool(double)>& whole, double from, double to) {
  if (!whole) {
    return {};
  }
  return [&whole, from, to](double share) { return whole(from + (to - from) * share); };
}

/// The position as result names bear it; a repeat on one axis gets _2, _3 and so on.
std::string uniqueName(const VibrationCapture& row, std::set<std::string>& taken) {
  const std::string plain = resultName(row.position);
  std::string name = plain;
  for (int repeat = 2; !taken.insert(row.axis + "." + name).second; ++repeat) {
    name = plain + "_" + std::to_string(repeat);
  }
  return name;
}

/// Everything the analysis of a capture depends on.
struct AnalysisKey {
  VibrationCapture row;
  std::string name;
  double segmentTime;
  std::size_t cells;

  friend bool operator==(const AnalysisKey&, const AnalysisKey&) = default;
};

/// What was found in each capture, and by axis why captures or ripples of it were refused.
struct Examined {
  std::vector<AnalysisPointer> captures;
  std::vector<Ripple> ripples;
  std::map<std::string, Refusal> refused;
};

/// Runs a part; what is refused in it is a finding and is remembered for the axis.
void attempt(StepResult& result, Examined& examined, const std::string& axis,
             std::initializer_list<ResultId> ids, const std::function<void()>& part) {
  result.attempt(ids, [&] {
    try {
      part();
    } catch (const Refusal& refusal) {
      examined.refused.try_emplace(axis, refusal);
      throw;
    }
  });
}

void examineCaptures(const std::vector<VibrationCapture>& rows, double segmentTime, WorkMemory& memory,
                     const StepContext& context, StepResult& result, Examined& examined) {
  const auto& key = keysOf<ResonanceResults>();
  const auto sweeps =
      std::count_if(rows.begin(), rows.end(), [](const auto& row) { return row.isSweep(); });
  const std::size_t cells = std::min(
      mostPictureCells, allPictureCells / static_cast<std::size_t>(std::max<std::ptrdiff_t>(sweeps, 1)));
  std::set<std::string> taken;
  const double share = captureShare / static_cast<double>(std::max<std::size_t>(rows.size(), 1));
  double begin = 0;
  for (const VibrationCapture& row : rows) {
    const AnalysisKey terms{row, uniqueName(row, taken), segmentTime, cells};
    const Name position(terms.name, row.position);
    attempt(result, examined, row.axis,
            {key.positionModeHz(row.axis, position, 1), key.positionModeDamping(row.axis, position, 1)},
            [&] {
              examined.captures.push_back(memory.recall<CaptureAnalysis>(terms, [&] {
                CaptureAnalysis analysis = analyseCapture(row, terms.name, segmentTime, cells,
                                                          partOf(context.progress, begin, begin + share));
                analysis.charts = captureCharts(analysis);
                return analysis;
              }));
            });
    begin += share;
  }
}

void examineRipples(const std::vector<RippleRow>& rows, const Instrument& distance, StepResult& result,
                    Examined& examined) {
  for (const auto& ofAxis : rowsByAxis(rows)) {
    const std::string& axis = ofAxis.front().axis;
    attempt(result, examined, axis, {keysOf<ResonanceResults>().rippleHz(axis)},
            [&] { examined.ripples.push_back(rippleOf(ofAxis, distance)); });
  }
}

}  // namespace

StepResult evaluate(const ResonanceInputs& inputs, const StepContext& context) {
  const std::vector<VibrationCapture> rows = included(inputs.captures);
  const std::vector<RippleRow> ripples = included(inputs.ripples);
  StepResult result;
  if (rows.empty() && ripples.empty()) {
    result.want({"captures"});
    return result;
  }
  const ChoiceRules rules{inputs.frequencyAllowance, inputs.residualLimit, inputs.designDamping,
                          inputs.pathDeviation};
  WorkMemory forThisTime;
  WorkMemory& memory = context.memory ? *context.memory : forThisTime;
  Examined examined;
  examineCaptures(rows, inputs.segmentTime, memory, context, result, examined);
  examineRipples(ripples, context.instrument("distance_mm"), result, examined);
  const auto studies = studyAxes(examined.captures, examined.ripples, examined.refused, rules, memory,
                                 partOf(context.progress, captureShare, 1));
  for (const AnalysisPointer& analysis : examined.captures) {
    giveCapture(*analysis, result);
  }
  for (const AxisStudy& study : studies) {
    giveAxis(study, rules, context, result);
    auto charts = axisCharts(study, rules, memory);
    std::move(charts.begin(), charts.end(), std::back_inserter(result.charts));
  }
  for (const AnalysisPointer& analysis : examined.captures) {
    result.charts.insert(result.charts.end(), analysis->charts.begin(), analysis->charts.end());
  }
  return result;
}

Step resonanceStep() {
  Step step;
  step.key = "resonance";
  step.name = Text::tr("Resonance");
  step.purpose =
      Text::tr("Find what rings on each axis and the shaper and acceleration that keep it quiet.");
  step.stage = Stage::motion;
  step.moves = true;
  step.caution = Text::tr(
      "The axes move fast and by themselves: travel clear, guards on, hands out, one hand at the emergency "
      "stop, and stay by the machine.");
  step.benchMinutes = 20;
  step.waitMinutes = 5;
  step.entryWidth = EntryWidth::wide;
  step.emptyCharts = emptyResonanceCharts();
  Step made = describedStep<ResonanceResults, ResonanceInputs>(std::move(step), &evaluate);
  made.headline = {"<axis>.mode_1_hz"};  // of several modes the first
  return made;
}

}  // namespace fettle
