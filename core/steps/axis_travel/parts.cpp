#include "core/steps/axis_travel/parts.h"

#include <algorithm>
#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/axis_travel/drive.h"

namespace fettle {
namespace {

constexpr double within = 0.005;

/// One kind of part: the common ones, where it stands on the sheet, and how travel follows it.
struct PartKind {
  const char* name;
  std::optional<double> AxisDrive::*onSheet;
  const char* drive;  ///< the only drive that has it; empty: both
  int power;          ///< travel per step goes with this power of the part
  std::vector<double> common;
};

const std::vector<PartKind>& partKinds() {
  static const std::vector<PartKind> kinds{
      {"teeth",
       &AxisDrive::teeth,
       "belt",
       1,
       {10, 12, 14, 15, 16, 17, 18, 20, 22, 24, 25, 28, 30, 32, 36, 40, 48, 60}},
      {"pitch", &AxisDrive::pitch, "belt", 1, {2, 2.032, 2.5, 3, 5, 5.08, 8, 10}},
      {"lead", &AxisDrive::lead, "screw", 1, {0.7, 0.8, 1, 1.25, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20}},
      {"step_angle", &AxisDrive::stepAngle, "", 1, {0.9, 1.8, 3.6, 7.5, 15}},
      {"microsteps", &AxisDrive::microsteps, "", -1, {1, 2, 4, 8, 16, 32, 64, 128, 256}},
  };
  return kinds;
}

bool near(double first, double second) {
  return std::abs(first / second - 1) <= within;
}

bool same(double first, double second) {
  return std::abs(first - second) <= 1e-6 * std::abs(first);
}

/// Why the sheet or the steps per mm found rule a pair out; empty when they do not.
std::string contradictionOf(const PartKind& kind, const PartPair& pair, const AxisDrive& sheet,
                            const std::optional<double>& stepsFound) {
  if (!sheet.drive.empty() && *kind.drive && sheet.drive != kind.drive) {
    return sheet.drive == "belt" ? Text::tr("the sheet has a belt") : Text::tr("the sheet has a screw");
  }
  const auto& stated = sheet.*kind.onSheet;
  if (stated && !same(*stated, pair.configured) && !same(*stated, pair.actual)) {
    return say(Text::tr("the sheet has {0}"), formatNumber(*stated));
  }
  AxisDrive configured = sheet;
  configured.*kind.onSheet = pair.configured;
  const auto steps = stepsPerMmOf(configured);
  if (steps && stepsFound && !near(*steps, *stepsFound)) {
    return say(Text::tr("{0} would be configured as {1} steps per mm, found are {2}"),
               formatNumber(pair.configured), formatPlain(*steps), formatPlain(*stepsFound));
  }
  return {};
}

/// The sheet already has the part that would really be there.
bool isAsOnSheet(const PartPair& pair, const AxisDrive& sheet) {
  const auto kind = std::find_if(partKinds().begin(), partKinds().end(),
                                 [&](const PartKind& known) { return known.name == pair.kind; });
  const auto& stated = sheet.*(kind->onSheet);
  return stated && same(*stated, pair.actual);
}

void preferOtherThanTheSheet(std::vector<PartPair>& pairs, const AxisDrive& sheet) {
  const bool others = std::any_of(pairs.begin(), pairs.end(), [&](const PartPair& pair) {
    return pair.contradiction.empty() && !isAsOnSheet(pair, sheet);
  });
  for (auto& pair : pairs) {
    if (others && pair.contradiction.empty() && isAsOnSheet(pair, sheet)) {
      pair.contradiction = say(Text::tr("the sheet already has {0}"), formatNumber(pair.actual));
    }
  }
}

}  // namespace

std::string PartPair::words() const {
  const std::string there = formatNumber(actual);
  const std::string instead = formatNumber(configured);
  if (kind == "teeth") {
    return say(Text::tr("a pulley of {0} teeth instead of {1}"), there, instead);
  }
  if (kind == "pitch") {
    return say(Text::tr("a belt of {0} mm pitch instead of {1}"), there, instead);
  }
  if (kind == "lead") {
    return say(Text::tr("a screw of {0} mm lead instead of {1}"), there, instead);
  }
  if (kind == "step_angle") {
    return say(Text::tr("a motor of {0}° a step instead of {1}°"), there, instead);
  }
  return say(Text::tr("{0} microsteps instead of {1}"), there, instead);
}

std::vector<PartPair> explainingPairs(double ratio, const AxisDrive& sheet,
                                      const std::optional<double>& stepsFound) {
  std::vector<PartPair> pairs;
  for (const auto& kind : partKinds()) {
    std::vector<double> parts = kind.common;
    const auto& stated = sheet.*kind.onSheet;
    if (stated && std::none_of(parts.begin(), parts.end(), [&](double p) { return same(p, *stated); })) {
      parts.push_back(*stated);
    }
    for (const double configured : parts) {
      for (const double actual : parts) {
        PartPair pair{kind.name, configured, actual, std::pow(actual / configured, kind.power), {}};
        if (!same(configured, actual) && near(pair.ratio, ratio)) {
          pair.contradiction = contradictionOf(kind, pair, sheet, stepsFound);
          pairs.push_back(std::move(pair));
        }
      }
    }
  }
  preferOtherThanTheSheet(pairs, sheet);
  return pairs;
}

}  // namespace fettle
