#include "core/steps/resonance/findings.h"

#include <algorithm>
#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/contract/reading_findings.h"

namespace fettle {
namespace {

constexpr double jitterLimit = 0.05;
constexpr double samplesPerPeriod = 4;
constexpr double rateFactor = 3.6;
constexpr double heavyDamping = 0.2;
constexpr double cutShort = 0.98;

std::string plain(double value) {
  return formatPlain(value);
}

/// What a sweep passed at that time, if it began with the capture.
std::string sweptMeanwhile(const VibrationCapture& row, double time) {
  if (!row.isSweep()) {
    return {};
  }
  return fmt::format(" {}",
                     say(Text::tr("The sweep then passed about {0} Hz; a mode near that reads wrongly."),
                         formatFixed(*row.sweepFrom + row.sweepRate() * time, 0)));
}

void findGaps(const CaptureAnalysis& capture, StepResult& result) {
  const auto& gaps = capture.sampling.gaps;
  if (gaps.empty()) {
    return;
  }
  const auto longest = std::max_element(gaps.begin(), gaps.end(),
                                        [](const auto& a, const auto& b) { return a.length < b.length; });
  const double from = longest->at - capture.row.capture->column("time_s").front();
  const std::string length = formatFixed(longest->length, decimalsFor(longest->length, 2));
  const std::string text =
      gaps.size() == 1
          ? say(Text::tr("{0}: {1} s of samples are missing at {2} s; no segment spans the gap."),
                capture.label, length, formatFixed(from, 2))
          : say(Text::tr("{0}: samples are missing in {1} places, the longest gap is {2} s at {3} s; no "
                         "segment spans one."),
                capture.label, gaps.size(), length, formatFixed(from, 2));
  result.addFinding("gap", Severity::caution, text + sweptMeanwhile(capture.row, from));
}

void findSampling(const CaptureAnalysis& capture, StepResult& result) {
  findGaps(capture, result);
  const Sampling& sampling = capture.sampling;
  if (sampling.jitter > jitterLimit) {
    result.addFinding(
        "jitter", Severity::caution,
        say(Text::tr("{0}: the intervals between samples scatter by {1} % of their median of {2} ms; "
                     "over 5 % smears high frequencies."),
            capture.label, formatFixed(100 * sampling.jitter, 1), plain(1000 * sampling.medianInterval)));
  }
  const VibrationCapture& row = capture.row;
  if (!row.isSweep()) {
    return;
  }
  if (sampling.rate < samplesPerPeriod * *row.sweepTo) {
    result.addFinding(
        "rate-too-low", Severity::caution,
        say(Text::tr("{0}: {1} samples a second are fewer than 4 × {2} Hz, the end of the sweep; sample "
                     "faster or end the sweep at {3} Hz."),
            capture.label, plain(sampling.rate), formatNumber(*row.sweepTo),
            formatNumber(std::floor(sampling.rate / samplesPerPeriod))));
  }
  if (sampling.duration < cutShort * *row.sweepTime) {
    result.addFinding(
        "sweep-cut-short", Severity::caution,
        say(Text::tr("{0}: the capture lasts {1} s, the sweep {2} s; either the end of the sweep is "
                     "missing or the sweep time was entered wrongly."),
            capture.label, plain(sampling.duration), formatNumber(*row.sweepTime)));
  }
}

void findClipping(const CaptureAnalysis& capture, StepResult& result) {
  for (const std::string& column : capture.clipped) {
    const std::vector<double>& samples = capture.row.capture->column(column);
    const auto [lowest, highest] = std::minmax_element(samples.begin(), samples.end());
    result.addFinding(
        "clipped", Severity::fault,
        say(Text::tr("{0}: {1} stays at its limit ({2} to {3} mm/s²) in {4} % of the rows; the capture "
                     "proposes nothing. Set the sensor to a wider range or shake less."),
            capture.label, column, plain(*lowest), plain(*highest),
            formatFixed(100 * clippedShare(samples), 1)));
  }
}

/// The mode that asks for the most, by what it tolerates.
const MeasuredMode& narrowest(const CaptureAnalysis& capture) {
  const auto& modes = capture.modes.modes;
  return *std::min_element(modes.begin(), modes.end(), [](const MeasuredMode& a, const MeasuredMode& b) {
    return a.damping * a.frequency < b.damping * b.frequency;
  });
}

void findResolution(const CaptureAnalysis& capture, StepResult& result) {
  if (capture.modes.modes.empty() || capture.row.isTap()) {
    return;
  }
  const MeasuredMode& mode = narrowest(capture);
  const double halfWidth = mode.damping * mode.frequency;
  const double bin = capture.segments.sampleRate / static_cast<double>(capture.segments.length);
  if (2 * halfWidth < 3 * bin) {
    result.addFinding(
        "resolution-too-coarse", Severity::caution,
        say(Text::tr("{0}: the mode at {1} Hz is {2} Hz wide and the density resolves {3} Hz, so its "
                     "damping reads too high; segments of {4} s or more would do."),
            capture.label, formatFixed(mode.frequency, 1), plain(2 * halfWidth), plain(3 * bin),
            plain(3 / (2 * halfWidth))));
  }
  const double fastest = rateFactor * halfWidth * halfWidth;
  if (capture.row.isSweep() && capture.row.sweepRate() > fastest) {
    const double span = *capture.row.sweepTo - *capture.row.sweepFrom;
    result.addFinding(
        "sweep-too-fast", Severity::caution,
        say(Text::tr("{0}: the sweep runs at {1} Hz/s, too fast for the mode at {2} Hz to build up; "
                     "at most {3} Hz/s, that is {4} s for this sweep."),
            capture.label, plain(capture.row.sweepRate()), formatFixed(mode.frequency, 1), plain(fastest),
            formatNumber(std::ceil(span / fastest))));
  }
}

}  // namespace

void findInCapture(const CaptureAnalysis& capture, StepResult& result) {
  findSampling(capture, result);
  findClipping(capture, result);
  findResolution(capture, result);
  if (capture.modes.modes.empty() && capture.clipped.empty()) {
    result.addFinding(
        "no-mode", Severity::caution,
        say(Text::tr("{0}: no mode was found, {1}. Excite harder, check how the sensor is fixed."),
            capture.label, capture.whyNoMode));
  }
  if (capture.row.excitedBy() == "unknown") {
    result.addFinding(
        "excitation-unknown", Severity::note,
        say(Text::tr("{0}: the excitation is unknown and taken as flat; dampings and the weights of "
                     "the modes lean on that."),
            capture.label));
  }
}

void findInRipple(const AxisStudy& study, const StepContext& context, StepResult& result) {
  const Ripple& ripple = *study.ripple;
  const std::string what = say(Text::tr("{0}: the frequency of the ripples"), study.axis);
  if (ripple.rows.size() == 1) {
    noteSingleReading(result, what);
  }
  noteOutliers(result, ripple.frequencies, ripple.rows, ripple.resolution, what, "Hz");
  if (const auto acceleration = context.asFoundNumber(study.axis + ".acceleration");
      acceleration && *acceleration > 0) {
    result.addFinding(
        "ripple-start", Severity::note,
        say(Text::tr("{0}: behind a corner the axis gathers speed for {1} mm (to {2} mm/s at {3} "
                     "mm/s²); no crest counts there."),
            study.axis, plain(lengthToSkip(ripple.fastest, *acceleration)), formatNumber(ripple.fastest),
            formatNumber(*acceleration)));
  }
  if (study.restsOnRipple || !study.deciding()) {
    return;
  }
  const auto& modes = study.deciding()->modes;
  const double found = ripple.frequency.value;
  const MeasuredMode& mode =
      *std::min_element(modes.begin(), modes.end(), [&](const MeasuredMode& a, const MeasuredMode& b) {
        return std::abs(a.frequency - found) < std::abs(b.frequency - found);
      });
  const std::vector<Contribution> parts{{ripple.frequency.u.value_or(0), ripple.frequency.dof},
                                        {mode.frequencyError, study.deciding()->dof}};
  const Quantity difference = combinedQuantity(found - mode.frequency, "Hz", parts);
  const double limit = expandedUncertainty(difference).value_or(0);
  if (std::abs(difference.value) > limit) {
    result.addFinding(
        "ripple-disagrees", Severity::caution,
        say(Text::tr("{0}: the printed ripples stand at {1}, the nearest mode at {2} Hz; the "
                     "difference of {3} Hz exceeds its uncertainty of {4} Hz. Look at load and "
                     "position of the capture, and count again."),
            study.axis, formatQuantity(ripple.frequency), formatFixed(mode.frequency, 1),
            formatFixed(std::abs(difference.value), 1), formatFixed(limit, 1)));
  }
}

void findInChoice(const AxisStudy& study, const ChoiceRules& rules, StepResult& result) {
  const ShaperChoice& choice = *study.choice;
  if (choice.damping > heavyDamping) {
    result.addFinding(
        "heavy-damping", Severity::caution,
        say(Text::tr("{0}: the damping ratio of the heaviest mode is {1}, over 0.2; something drags or "
                     "rattles, or two modes lie close together."),
            study.axis, plain(choice.damping)),
        "mechanics");
  }
  if (!choice.withinLimit()) {
    result.addFinding(
        "stiffen-frame", Severity::caution,
        say(Text::tr("{0}: no shaper leaves less than {1} % of the vibration; the best leaves {2} %. "
                     "The modes lie too far apart: stiffen the frame, tighten belts and joints, take "
                     "weight off."),
            study.axis, formatNumber(100 * rules.residualLimit),
            formatFixed(100 * choice.best().residual, 1)),
        "mechanics");
  }
}

}  // namespace fettle
