#include <algorithm>
#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/resonance/charts.h"

namespace fettle {
namespace {

constexpr int curvePoints = 160;
constexpr std::size_t mostBins = 400;

Axis frequencyAxis() {
  return {Text::tr("frequency"), "Hz"};
}

double stepTo(double low, double high, int i) {
  return low + (high - low) * i / (curvePoints - 1);
}

/// What is above 0 within the range; of many bins the highest of neighbours, so that no peak is lost.
Series densitySeries(const std::string& name, std::span<const double> frequency,
                     std::span<const double> density, const maths::Interval& range) {
  Series series;
  series.name = name;
  series.role = SeriesRole::trace;
  std::vector<std::size_t> bins;
  for (std::size_t k = 0; k < frequency.size(); ++k) {
    if (frequency[k] >= range.low && frequency[k] <= range.high && density[k] > 0) {
      bins.push_back(k);
    }
  }
  const std::size_t together = bins.size() / mostBins + 1;
  for (std::size_t first = 0; first < bins.size(); first += together) {
    std::size_t highest = bins[first];
    for (std::size_t i = first; i < std::min(first + together, bins.size()); ++i) {
      highest = density[bins[i]] > density[highest] ? bins[i] : highest;
    }
    series.x.push_back(toDigits(frequency[highest], 5));
    series.y.push_back(toDigits(density[highest], 4));
  }
  return series;
}

Series modelSeries(const CaptureAnalysis& capture) {
  Series series;
  series.name = say(Text::tr("{0}, fitted"), capture.row.position);
  series.role = SeriesRole::model;
  for (int i = 0; i < curvePoints; ++i) {
    const double frequency = stepTo(capture.range.low, capture.range.high, i);
    series.x.push_back(toDigits(frequency, 5));
    series.y.push_back(toDigits(maths::modalDensity(*capture.model, frequency), 4));
  }
  return series;
}

/// The divided density has another unit where the excitation is flat; captures of both kinds share a chart
/// without a unit.
std::string dividedUnit(const AxisStudy& study) {
  const auto divided = std::count_if(study.captures.begin(), study.captures.end(),
                                     [](const auto& capture) { return capture->byFrequencySquared; });
  return divided == 0 ? "(mm/s2)2/Hz" : divided == std::ssize(study.captures) ? "(mm/s2)2/Hz3" : "";
}

Chart dividedChart(const AxisStudy& study) {
  Chart chart;
  chart.view = "modes";
  chart.about = study.axis;
  chart.title = say(Text::tr("{0}: modes"), study.axis);
  chart.x = frequencyAxis();
  chart.y = {Text::tr("density, divided by the excitation"), dividedUnit(study), true};
  int hue = 0;
  for (const AnalysisPointer& capture : study.captures) {
    if (!capture->frequency.empty() && !capture->row.isTap()) {
      chart.series.push_back(
          densitySeries(capture->row.position, capture->frequency, capture->divided, capture->range));
      chart.series.back().hue = hue;
      if (capture->model) {
        chart.series.push_back(modelSeries(*capture));
        chart.series.back().hue = hue;
      }
    }
    ++hue;
  }
  if (study.deciding()) {
    for (const MeasuredMode& mode : study.deciding()->modes) {
      chart.lines.push_back({formatFixed(mode.frequency, 1) + " Hz", toDigits(mode.frequency, 5), true});
    }
  }
  return chart;
}

Chart columnsChart(const AxisStudy& study) {
  Chart chart;
  chart.view = "columns";
  chart.about = study.axis;
  chart.title = say(Text::tr("{0}: all directions"), study.axis);
  chart.x = frequencyAxis();
  chart.y = {Text::tr("density"), "(mm/s2)2/Hz", true};
  int hue = 0;
  for (const AnalysisPointer& capture : study.captures) {
    const double highest = 1.3 * (capture->row.isSweep() ? *capture->row.sweepTo : capture->range.high);
    for (const MachineSignal& signal : capture->records) {
      if (signal.density.empty()) {
        continue;
      }
      Series series = densitySeries(capture->row.position + ", " + signal.axis, capture->frequency,
                                    signal.density, {0, highest});
      series.role = &signal == &capture->fitted() ? SeriesRole::trace : SeriesRole::comparison;
      series.hue = hue;
      chart.series.push_back(std::move(series));
    }
    if (capture->floor > 0) {
      chart.lines.push_back({say(Text::tr("floor, {0}"), capture->row.position), capture->floor, false});
    }
    ++hue;
  }
  return chart;
}

std::string atFrequency(const Candidate& candidate) {
  return say(Text::tr("{0} at {1} Hz"), shaperLabel(candidate.kind),
             formatFixed(candidate.shaper.frequency, 1));
}

LimitLine limitOf(const ChoiceRules& rules, bool vertical) {
  return {say(Text::tr("limit {0}"), formatNumber(rules.residualLimit)), rules.residualLimit, vertical};
}

/// V(f, ζ) of each candidate over the frequency of a mode, with the spans in which the modes may lie.
Chart residualChart(const AxisStudy& study, const ChoiceRules& rules) {
  const ShaperChoice& choice = *study.choice;
  Chart chart;
  chart.view = "residual";
  chart.about = study.axis;
  chart.title = say(Text::tr("{0}: vibration left"), study.axis);
  chart.x = {Text::tr("frequency of a mode"), "Hz"};
  chart.y = {Text::tr("vibration left, share of that without shaper"), "1"};
  for (std::size_t c = 0; c < choice.candidates.size(); ++c) {
    const Candidate& candidate = choice.candidates[c];
    Series series;
    series.name = atFrequency(candidate);
    series.role = c == choice.proposed ? SeriesRole::model : SeriesRole::comparison;
    series.hue = static_cast<int>(c);
    for (int i = 0; i < curvePoints; ++i) {
      const double frequency = stepTo(0.7 * choice.lowest, choice.highest, i);
      series.x.push_back(toDigits(frequency, 4));
      series.y.push_back(
          toDigits(maths::residualVibration(candidate.shaper, frequency, choice.damping), 3));
    }
    chart.series.push_back(std::move(series));
  }
  for (const ModeSet& set : study.sets) {
    for (const MeasuredMode& mode : set.modes) {
      chart.bands.push_back({set.position + " " + formatFixed(mode.frequency, 1) + " Hz",
                             toDigits(mode.frequency * (1 - rules.allowance), 4),
                             toDigits(mode.frequency * (1 + rules.allowance), 4), true});
    }
  }
  chart.lines.push_back(limitOf(rules, false));
  return chart;
}

Chart candidatesChart(const AxisStudy& study, const ChoiceRules& rules) {
  const ShaperChoice& choice = *study.choice;
  Chart chart;
  chart.view = "candidates";
  chart.about = study.axis;
  chart.title = say(Text::tr("{0}: shapers compared"), study.axis);
  chart.x = {Text::tr("vibration left at worst, share of that without shaper"), "1"};
  chart.y = {Text::tr("acceleration limit"), "mm/s2"};
  chart.lines.push_back(limitOf(rules, true));
  for (std::size_t c = 0; c < choice.candidates.size(); ++c) {
    const Candidate& candidate = choice.candidates[c];
    Series series;
    series.name = atFrequency(candidate);
    series.role = c == choice.proposed ? SeriesRole::reached : SeriesRole::measured;
    series.hue = static_cast<int>(c);
    series.x = {toDigits(candidate.residual, 4)};
    series.y = {toDigits(candidate.accelerationLimit, 5)};
    chart.series.push_back(std::move(series));
  }
  return chart;
}

/// What the curves of an axis depend on; of the choice they show which shaper is proposed, no limits.
struct CurveTerms {
  std::string axis;
  std::vector<AnalysisPointer> captures;
  SearchTerms search;
  std::size_t proposed = 0;
  friend bool operator==(const CurveTerms&, const CurveTerms&) = default;
};

std::vector<Chart> curveCharts(const AxisStudy& study, const ChoiceRules& rules) {
  std::vector<Chart> charts{dividedChart(study), columnsChart(study)};
  if (study.choice) {
    charts.push_back(residualChart(study, rules));
  }
  return charts;
}

}  // namespace

std::vector<Chart> axisCharts(const AxisStudy& study, const ChoiceRules& rules, WorkMemory& memory) {
  const CurveTerms terms{study.axis, study.captures, termsOf(study.sets, rules),
                         study.choice ? study.choice->proposed : 0};
  const auto curves = memory.recall<std::vector<Chart>>(terms, [&] { return curveCharts(study, rules); });
  std::vector<Chart> charts = *curves;
  if (study.choice) {
    charts.push_back(candidatesChart(study, rules));
  }
  for (Chart& chart : charts) {
    chart.whenEmpty = addACapture();
  }
  return charts;
}

std::string addACapture() {
  return Text::tr("Add a sweep, a tap or a run with the file of the vibration sensor.");
}

std::vector<Chart> emptyResonanceCharts() {
  Chart chart;
  chart.view = "modes";
  chart.about = "x";
  chart.title = say(Text::tr("{0}: modes"), "x");
  chart.x = frequencyAxis();
  chart.y = {Text::tr("density, divided by the excitation"), "(mm/s2)2/Hz3", true};
  chart.whenEmpty = addACapture();
  return {chart};
}

}  // namespace fettle
