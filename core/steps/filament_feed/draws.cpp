#include "core/steps/filament_feed/draws.h"

#include <algorithm>
#include <cmath>

#include "core/maths/descriptive.h"
#include "core/maths/distributions.h"
#include "core/maths/straight_line.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/filament_feed/results.h"

namespace fettle {
namespace {

constexpr double significance = 0.05;

/// Standard uncertainty of one drawn length from the resolution of its two readings, mm.
double resolutionOfDraw(const StepContext& context) {
  return std::hypot(context.instrument("before_mm").r, context.instrument("after_mm").r) / std::sqrt(12.0);
}

/// Limit of error over a drawn length, mm: once for one instrument, of both where they differ.
double limitOverDraw(const std::vector<Draw>& draws, const StepContext& context) {
  const Instrument& before = context.instrument("before_mm");
  const Instrument& after = context.instrument("after_mm");
  double longest = 0;
  for (const auto& draw : draws) {
    longest = std::max(longest, *draw.before);
  }
  const double first = before.limitOfError(longest);
  return before == after ? first : std::hypot(first, after.limitOfError(longest));
}

std::vector<double> ratiosOf(const std::vector<Draw>& draws) {
  std::vector<double> ratios;
  for (const auto& draw : draws) {
    ratios.push_back(draw.ratio());
  }
  return ratios;
}

double meanCommanded(const std::vector<Draw>& draws) {
  double sum = 0;
  for (const auto& draw : draws) {
    sum += *draw.commanded;
  }
  return sum / static_cast<double>(draws.size());
}

/// Of the mean ratio, from the resolution alone.
Contribution resolutionOfMean(const std::vector<Draw>& draws, double resolution) {
  double squares = 0;
  for (const auto& draw : draws) {
    squares += resolution * resolution / (*draw.commanded * *draw.commanded);
  }
  return {std::sqrt(squares) / static_cast<double>(draws.size())};
}

Quantity meanRatio(const std::vector<Draw>& draws, const StepContext& context) {
  const auto ratios = ratiosOf(draws);
  const auto n = static_cast<double>(ratios.size());
  std::vector<Contribution> parts{
      resolutionOfMean(draws, resolutionOfDraw(context)),
      {limitOverDraw(draws, context) / std::sqrt(3.0) / meanCommanded(draws)},
  };
  if (ratios.size() > 1) {
    parts.push_back({maths::sampleStandardDeviation(ratios) / std::sqrt(n), n - 1});
  }
  return combinedQuantity(maths::mean(ratios), "1", parts);
}

std::vector<DrawsAtSpeed> bySpeed(const std::vector<Draw>& draws) {
  std::vector<DrawsAtSpeed> groups;
  for (const auto& draw : draws) {
    if (!draw.speed) {
      continue;
    }
    const auto same = std::find_if(groups.begin(), groups.end(),
                                   [&](const DrawsAtSpeed& group) { return group.speed == *draw.speed; });
    if (same == groups.end()) {
      groups.push_back({*draw.speed, {draw}});
    } else {
      same->draws.push_back(draw);
    }
  }
  std::sort(groups.begin(), groups.end(),
            [](const DrawsAtSpeed& a, const DrawsAtSpeed& b) { return a.speed < b.speed; });
  return groups;
}

/// Scatter of one draw about the mean of its speed.
Contribution pooledScatter(const std::vector<DrawsAtSpeed>& groups) {
  double squares = 0, freedom = 0;
  for (const auto& group : groups) {
    const auto ratios = ratiosOf(group.draws);
    const double mean = maths::mean(ratios);
    for (const double ratio : ratios) {
      squares += (ratio - mean) * (ratio - mean);
    }
    freedom += static_cast<double>(ratios.size() - 1);
  }
  return freedom > 0 ? Contribution{std::sqrt(squares / freedom), freedom} : Contribution{};
}

Quantity slipOf(const DrawsAtSpeed& group, const DrawsAtSpeed& slowest, const Contribution& scatter,
                double resolution) {
  const double ratio = maths::mean(ratiosOf(group.draws));
  const double first = maths::mean(ratiosOf(slowest.draws));
  const double weights =
      std::sqrt(1 / static_cast<double>(group.draws.size()) +
                ratio * ratio / (first * first * static_cast<double>(slowest.draws.size())));
  const Contribution parts[] = {
      {scatter.u * weights / first, scatter.dof},
      {resolutionOfMean(group.draws, resolution).u / first},
      {resolutionOfMean(slowest.draws, resolution).u * ratio / (first * first)},
  };
  return combinedQuantity(1 - ratio / first, "1", parts);
}

void giveSpeeds(StepResult& result, const std::vector<DrawsAtSpeed>& groups, const StepContext& context) {
  const auto& key = keysOf<FilamentFeedResults>();
  const Contribution scatter = pooledScatter(groups);
  const double resolution = resolutionOfDraw(context);
  for (std::size_t k = 0; k < groups.size(); ++k) {
    const Name name(std::to_string(k + 1), formatNumber(groups[k].speed) + " mm/s");
    result.give(key.speed(name), groups[k].speed);
    result.give(key.ratioAtSpeed(name), meanRatio(groups[k].draws, context));
    if (k > 0) {
      result.give(key.slip(name), slipOf(groups[k], groups.front(), scatter, resolution));
    }
  }
}

bool fallsWithSpeed(const maths::StraightLine& line, const std::vector<Draw>& draws, double resolution) {
  const double reading = resolution / meanCommanded(draws);
  const Contribution parts[] = {{line.slopeStandardError(), line.degreesOfFreedom},
                                {reading / std::sqrt(line.sumOfSquaresX)}};
  const Contribution whole = combined(parts);
  // Readings that agree to the last digit, from an instrument called exact: rounding is no slip.
  const double rounding = 1e-9 / std::sqrt(line.sumOfSquaresX);
  return line.slope < -rounding &&
         maths::studentLower(line.slope / std::max(whole.u, rounding), whole.dof) < significance;
}

/// The draws whose mark came nearer; the others are refused.
std::vector<Draw> usable(StepResult& result, const std::vector<Draw>& draws) {
  std::vector<Draw> kept;
  std::vector<Refusal> refusals;
  for (const auto& draw : draws) {
    if (*draw.after < *draw.before) {
      kept.push_back(draw);
      continue;
    }
    refusals.push_back({say(Text::tr("Draws, row {0}: the mark is {1} mm from the inlet before and {2} mm "
                                     "after; after must be less than before."),
                            draw.number, formatNumber(*draw.before), formatNumber(*draw.after)),
                        fmt::format("draws[{}]", draw.number)});
  }
  if (kept.empty() && !refusals.empty()) {
    throw refusals.front();
  }
  for (const auto& refusal : refusals) {
    result.refuse(refusal);
  }
  return kept;
}

void noteSlip(StepResult& result, const std::vector<DrawsAtSpeed>& groups) {
  const double slowest = maths::mean(ratiosOf(groups.front().draws));
  const double fastest = maths::mean(ratiosOf(groups.back().draws));
  result.addFinding(
      "slip", Severity::caution,
      say(Text::tr("The feeder slips with speed: {0} of the commanded length at {1} mm/s, {2} at {3} "
                   "mm/s. Only the draws at {1} mm/s count. See to idler tension and nozzle; how much "
                   "the hot end melts is measured in melt rate."),
          formatFixed(slowest, 4), formatNumber(groups.front().speed), formatFixed(fastest, 4),
          formatNumber(groups.back().speed)),
      "melt-rate", "draws");
}

void noteCounted(StepResult& result, const std::vector<Draw>& counted, const StepContext& context) {
  if (counted.size() == 1) {
    noteSingleReading(result, Text::tr("The drawn ratio"));
  }
  std::vector<std::size_t> rows;
  for (const auto& draw : counted) {
    rows.push_back(draw.number);
  }
  const auto ratios = ratiosOf(counted);
  noteOutliers(result, ratios, rows, resolutionOfDraw(context) * std::sqrt(12.0) / meanCommanded(counted),
               Text::tr("drawn / commanded,"), "1");
}

std::vector<Draw> withSpeed(const std::vector<Draw>& draws) {
  std::vector<Draw> known;
  std::copy_if(draws.begin(), draws.end(), std::back_inserter(known),
               [](const Draw& draw) { return draw.speed.has_value(); });
  return known;
}

/// Gives the speeds; answers the draws that count.
std::vector<Draw> withoutSlip(StepResult& result, const std::vector<Draw>& draws,
                              const StepContext& context, DrawPicture& picture) {
  const auto groups = bySpeed(draws);
  const auto known = withSpeed(draws);
  if (groups.size() < 2 || known.size() < 3) {
    result.addFinding(
        "slip-unknown", Severity::note,
        Text::tr("Slip was not looked for: that takes three draws or more at two speeds or more."), {},
        "draws");
    return draws;
  }
  giveSpeeds(result, groups, context);
  for (const auto& group : groups) {
    picture.speeds.push_back(group.speed);
    picture.means.push_back(meanRatio(group.draws, context));
  }
  std::vector<double> speeds;
  for (const auto& draw : known) {
    speeds.push_back(*draw.speed);
  }
  const auto line = maths::fitStraightLine(speeds, ratiosOf(known));
  if (!line || !fallsWithSpeed(*line, known, resolutionOfDraw(context))) {
    return draws;
  }
  noteSlip(result, groups);
  return groups.front().draws;
}

}  // namespace

DrawPicture pictureOf(const std::vector<Draw>& draws) {
  DrawPicture picture;
  for (const auto& draw : draws) {
    if (draw.commanded && draw.before && draw.after && draw.speed) {
      (draw.excluded ? picture.excluded : picture.counted).push_back(draw);
    }
  }
  return picture;
}

std::optional<Quantity> giveDraws(StepResult& result, const std::vector<Draw>& draws,
                                  const StepContext& context, DrawPicture& picture) {
  const auto& key = keysOf<FilamentFeedResults>();
  picture = pictureOf(draws);
  if (included(draws).empty()) {
    result.wantFor(key.drawnRatio, {"draws"});
    return std::nullopt;
  }
  picture.counted.clear();
  const auto all = usable(result, included(draws));
  picture.counted = withSpeed(all);
  const auto counted = withoutSlip(result, all, context, picture);
  if (counted.size() < all.size()) {
    picture.leftOut = withSpeed(all);
    std::erase_if(picture.leftOut, [&](const Draw& draw) { return *draw.speed == *counted.front().speed; });
    picture.counted = counted;
  }
  noteCounted(result, counted, context);
  const Quantity ratio = meanRatio(counted, context);
  result.give(key.drawnRatio, ratio);
  return ratio;
}

}  // namespace fettle
