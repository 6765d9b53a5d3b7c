#include "core/steps/resonance.h"

#include <algorithm>
#include <set>

#include "core/measure/text.h"
#include "core/steps/contract/result_name.h"
#include "core/steps/resonance/axis.h"
#include "core/steps/resonance/charts.h"

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

std::vector<AnalysisPointer> analyseAll(const std::vector<VibrationCapture>& rows, double segmentTime,
                                        WorkMemory& memory, const StepContext& context) {
  const auto sweeps =
      std::count_if(rows.begin(), rows.end(), [](const auto& row) { return row.isSweep(); });
  const std::size_t cells = std::min(
      mostPictureCells, allPictureCells / static_cast<std::size_t>(std::max<std::ptrdiff_t>(sweeps, 1)));
  std::vector<AnalysisPointer> analyses;
  std::set<std::string> taken;
  const double share = captureShare / static_cast<double>(std::max<std::size_t>(rows.size(), 1));
  for (const VibrationCapture& row : rows) {
    const double begin = share * static_cast<double>(analyses.size());
    const AnalysisKey key{row, uniqueName(row, taken), segmentTime, cells};
    analyses.push_back(memory.recall<CaptureAnalysis>(key, [&] {
      CaptureAnalysis analysis =
          analyseCapture(row, key.name, segmentTime, cells, partOf(context.progress, begin, begin + share));
      analysis.charts = captureCharts(analysis);
      return analysis;
    }));
  }
  return analyses;
}

std::vector<ResultDescription> resultDescriptions() {
  const std::string shaper = "<axis>.<shaper>.";
  return {
      {"<axis>.<position>.mode_<k>_hz", "Hz", Text::tr("Frequency of a mode at a position")},
      {"<axis>.<position>.mode_<k>_damping", "1", Text::tr("Damping ratio of a mode at a position")},
      {"<axis>.mode_<k>_hz", "Hz", Text::tr("Frequency of a mode"), {}, true},
      {"<axis>.mode_<k>_damping", "1", Text::tr("Damping ratio of a mode")},
      {"<axis>.deciding_position", "", Text::tr("Position that decides")},
      {"<axis>.ripple_hz", "Hz", Text::tr("Frequency of printed ripples")},
      {shaper + "frequency_hz", "Hz", Text::tr("Frequency of the shaper")},
      {shaper + "residual", "1", Text::tr("Vibration left at worst / without shaper")},
      {shaper + "band_low_hz", "Hz", Text::tr("Lower end of its 5 % band")},
      {shaper + "band_high_hz", "Hz", Text::tr("Upper end of its 5 % band")},
      {shaper + "duration_s", "s", Text::tr("Length of the shaper")},
      {shaper + "sigma_s", "s", Text::tr("Spread of the shaper in time")},
      {shaper + "acceleration_limit", "mm/s2", Text::tr("Acceleration limit")},
      {shaper + "corner_speed_limit", "mm/s", Text::tr("Corner speed limit")},
      {shaper + "reason", "", Text::tr("Why, or why not")},
      {"<axis>.recommended", "", Text::tr("Recommended shaper")},
      {"<axis>.reason", "", Text::tr("Reason")},
  };
}

}  // namespace

void ResonanceInputs::describe(FieldList& fields) {
  fields.table("captures", captures, Text::tr("Captures"))
      .help(Text::tr("One row for each recording: every axis at mid travel and where it moves most mass."));
  fields.table("ripples", ripples, Text::tr("Printed ripples"))
      .help(Text::tr("Ripples behind the corners of a print; they count where an axis has no capture."));
  fields.number("segment_s", segmentTime, Text::tr("Segment"), "s")
      .bounds(0.05, 60)
      .help(Text::tr("Length of the pieces the density is averaged over; longer resolves finer."));
  fields.number("frequency_allowance", frequencyAllowance, Text::tr("Allowance, share of frequency"), "1")
      .bounds(0, 0.5)
      .help(Text::tr("How far a mode may wander with load and position, as a share of its frequency."));
  fields.number("residual_limit", residualLimit, Text::tr("Vibration that may be left, share"), "1")
      .bounds(0.001, 0.9)
      .help(Text::tr("Share of the unshaped vibration."));
  fields.number("path_deviation_mm", pathDeviation, Text::tr("Path deviation allowed"), "mm")
      .bounds(0.001, 5)
      .help(Text::tr("How far shaping may round the path; it sets acceleration and corner speed."));
  fields.number("design_damping", designDamping, Text::tr("Design damping"), "1")
      .bounds(0, 0.5)
      .help(Text::tr("Damping ratio where nothing was measured."));
}

StepResult evaluate(const ResonanceInputs& inputs, const StepContext& context) {
  const std::vector<VibrationCapture> rows = included(inputs.captures);
  const std::vector<RippleRow> ripples = included(inputs.ripples);
  StepResult result;
  if (rows.empty() && ripples.empty()) {
    result.missing.emplace_back("captures");
    return result;
  }
  const ChoiceRules rules{inputs.frequencyAllowance, inputs.residualLimit, inputs.designDamping,
                          inputs.pathDeviation};
  WorkMemory forThisTime;
  WorkMemory& memory = context.memory ? *context.memory : forThisTime;
  const auto analyses = analyseAll(rows, inputs.segmentTime, memory, context);
  const auto printed = ripplesByAxis(ripples, context.instrument("distance_mm"));
  const auto studies =
      studyAxes(analyses, printed, rules, memory, partOf(context.progress, captureShare, 1));
  for (const AnalysisPointer& analysis : analyses) {
    giveCapture(*analysis, result);
  }
  for (const AxisStudy& study : studies) {
    giveAxis(study, rules, context, result);
    auto charts = axisCharts(study, rules, memory);
    std::move(charts.begin(), charts.end(), std::back_inserter(result.charts));
  }
  for (const AnalysisPointer& analysis : analyses) {
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
  step.headline = {"<axis>.mode_1_hz"};
  step.results = resultDescriptions();
  step.settings = {{"<axis>.shaper", Text::tr("Input shaper"), ""},
                   {"<axis>.shaper_hz", Text::tr("Frequency of the shaper"), "Hz"},
                   {"<axis>.acceleration", Text::tr("Acceleration"), "mm/s2"}};
  for (const auto kind : maths::shaperKinds) {
    step.names.push_back({std::string(maths::shaperKey(kind)), shaperLabel(kind)});
  }
  step.emptyCharts = emptyResonanceCharts();
  return withInputs<ResonanceInputs>(std::move(step), evaluate);
}

}  // namespace fettle
