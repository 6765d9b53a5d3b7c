#include "core/steps/resonance/ripples.h"

#include <algorithm>
#include <cmath>

#include "core/maths/descriptive.h"
#include "core/maths/sdof.h"
#include "core/maths/straight_line.h"
#include "core/measure/number_text.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/step.h"

namespace fettle {
namespace {

constexpr double countUncertainty = 0.25;  // whole intervals

[[noreturn]] void refuse(const RippleRow& row, const std::string& sentence) {
  throw Refusal{say(Text::tr("Printed ripples, row {0}: {1}"), row.number, sentence),
                fmt::format("ripples[{}]", row.number)};
}

/// Numbers between blanks or semicolons, or between commas that are no decimal sign: those before a blank,
/// and all where a point is the decimal sign.
std::vector<double> amplitudesOf(const RippleRow& row) {
  std::string words = row.amplitudes + " ";
  const bool decimalPoint = words.find('.') != std::string::npos;
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    if (words[i] == ',' && (decimalPoint || words[i + 1] == ' ')) {
      words[i] = ' ';
    }
  }
  std::vector<double> amplitudes;
  std::size_t at = 0;
  while ((at = words.find_first_not_of(" ;\t", at)) != std::string::npos) {
    const std::size_t end = std::min(words.find_first_of(" ;\t", at), words.size());
    const std::string word = words.substr(at, end - at);
    const auto value = numberFromKeyboard(word);
    if (!value || !(*value > 0)) {
      refuse(row,
             say(Text::tr("\"{0}\" is no amplitude; numbers above 0 in mm with blanks between them are "
                          "needed, such as 0.12 0.09 0.07."),
                 word));
    }
    amplitudes.push_back(*value);
    at = end;
  }
  return amplitudes;
}

struct Damping {
  double value = 0;
  Contribution error;
};

/// Damping ratio from the slope −δ of ln amplitude over the crests, ζ = δ/√(4π² + δ²).
Damping dampingOf(const RippleRow& row, const std::vector<double>& amplitudes) {
  std::vector<double> crest(amplitudes.size());
  std::vector<double> logarithm(amplitudes.size());
  for (std::size_t i = 0; i < amplitudes.size(); ++i) {
    crest[i] = static_cast<double>(i);
    logarithm[i] = std::log(amplitudes[i]);
  }
  const auto line = maths::fitStraightLine(crest, logarithm);
  const double decrement = -line->slope;
  if (!(decrement > 0)) {
    refuse(row, Text::tr("the amplitudes do not fall; give them crest after crest from the corner on."));
  }
  const double zeta = maths::dampingFromDecrement(decrement);
  // dζ/dδ = 4π²/(4π² + δ²)^(3/2) = (1 − ζ²)·ζ/δ
  const double sensitivity = (1 - zeta * zeta) * zeta / decrement;
  return {zeta, {sensitivity * line->slopeStandardError(), line->degreesOfFreedom}};
}

/// Mean of the rows' dampings; without an error where no row has three crests or more.
std::optional<Quantity> meanDamping(const std::vector<RippleRow>& rows) {
  std::vector<Contribution> errors;
  double sum = 0;
  double count = 0;
  for (const RippleRow& row : rows) {
    const auto amplitudes = amplitudesOf(row);
    if (amplitudes.size() < 2) {
      continue;
    }
    const Damping damping = dampingOf(row, amplitudes);
    sum += damping.value;
    count += 1;
    if (damping.error.dof > 0) {
      errors.push_back(damping.error);
    }
  }
  if (count == 0) {
    return std::nullopt;
  }
  if (errors.size() < static_cast<std::size_t>(count)) {
    return plainQuantity(sum / count, "1");
  }
  for (Contribution& error : errors) {
    error.u /= count;
  }
  return combinedQuantity(sum / count, "1", errors);
}

}  // namespace

ModeSet Ripple::asModes(double designDamping) const {
  MeasuredMode mode;
  mode.frequency = frequency.value;
  mode.frequencyError = frequency.u.value_or(0);
  mode.damping = damping ? damping->value : designDamping;
  mode.dampingError = damping ? damping->u.value_or(0) : 0;
  mode.coefficient = amplitude * mode.frequency * mode.frequency;  // so that the weight is the amplitude
  return {Text::tr("printed ripples"), {mode}, frequency.dof};
}

std::vector<std::vector<RippleRow>> rowsByAxis(const std::vector<RippleRow>& rows) {
  std::vector<std::vector<RippleRow>> groups;
  for (const RippleRow& row : rows) {
    const auto same = std::find_if(groups.begin(), groups.end(),
                                   [&](const auto& group) { return group.front().axis == row.axis; });
    same == groups.end() ? groups.push_back({row}) : same->push_back(row);
  }
  return groups;
}

Ripple rippleOf(const std::vector<RippleRow>& rows, const Instrument& distance) {
  Ripple ripple;
  ripple.axis = rows.front().axis;
  const auto n = static_cast<double>(rows.size());
  std::vector<double> amplitudes;
  double ownVariance = 0;  // of the mean: count and resolution, row by row
  double common = 0;       // of the mean: the limit of error
  for (const RippleRow& row : rows) {
    const double frequency = *row.speed * *row.count / *row.distance;
    const double resolution = distance.r / (std::sqrt(12.0) * *row.distance);
    const double relative = std::hypot(countUncertainty / *row.count, resolution);
    ownVariance += std::pow(frequency * relative / n, 2);
    common += frequency * distance.limitOfError(*row.distance) / (*row.distance * std::sqrt(3.0) * n);
    ripple.frequencies.push_back(frequency);
    ripple.rows.push_back(row.number);
    ripple.fastest = std::max(ripple.fastest, *row.speed);
    ripple.resolution = std::max(ripple.resolution, frequency * distance.r / *row.distance);
    if (const auto read = amplitudesOf(row); !read.empty()) {
      amplitudes.push_back(read.front());
    }
  }
  std::vector<Contribution> parts{{std::sqrt(ownVariance)}, {common}};
  if (rows.size() > 1) {
    parts.push_back({maths::sampleStandardDeviation(ripple.frequencies) / std::sqrt(n), n - 1});
  }
  ripple.frequency = combinedQuantity(maths::mean(ripple.frequencies), "Hz", parts);
  ripple.damping = meanDamping(rows);
  ripple.amplitude = amplitudes.empty() ? 1 : maths::mean(amplitudes);
  return ripple;
}

double lengthToSkip(double speed, double acceleration) {
  return speed * speed / (2 * acceleration);
}

}  // namespace fettle
