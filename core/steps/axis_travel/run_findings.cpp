#include "core/steps/axis_travel/run_findings.h"

#include "core/maths/descriptive.h"
#include "core/measure/text.h"
#include "core/steps/contract/reading_findings.h"

namespace fettle {
namespace {

// ISO 230-2:2014, clauses 4 and 5 (from memory): axes up to 2 m, five targets a metre and five at least.
constexpr std::size_t runsOfTheStandard = 5, targetsOfTheStandard = 5;

struct Distances {
  std::vector<double> values;
  std::vector<std::size_t> rows;
};

void addDistances(Distances& all, const ApproachRuns& runs) {
  if (runs.deviations.size() < 3) {
    return;
  }
  const double middle = maths::median(runs.deviations);
  bool middleLeftOut = runs.deviations.size() % 2 == 0;
  for (std::size_t i = 0; i < runs.deviations.size(); ++i) {
    const double distance = runs.deviations[i] - middle;
    if (!middleLeftOut && distance == 0) {
      middleLeftOut = true;
      continue;
    }
    all.values.push_back(distance);
    all.rows.push_back(runs.rows[i]);
  }
}

void noteFewRuns(StepResult& result, const AxisRuns& runs) {
  const std::size_t fewest = runs.fewestRuns();
  if (fewest == 1) {
    noteSingleReading(result, say(Text::tr("{0}: the position at some target"), runs.axis));
  }
  if (fewest < runsOfTheStandard) {
    result.addFinding("fewer-runs-than-standard", Severity::note,
                      say(Text::tr("{0}: runs to some target from one side: {1}; ISO 230-2 takes {2}."),
                          runs.axis, fewest, runsOfTheStandard));
  }
}

}  // namespace

void noteRuns(StepResult& result, const AxisRuns& runs, const Instrument& instrument) {
  noteFewRuns(result, runs);
  if (runs.targets.size() < targetsOfTheStandard) {
    result.addFinding("fewer-targets-than-standard", Severity::note,
                      say(Text::tr("{0}: targets along the travel: {1}; ISO 230-2 takes {2} or more."),
                          runs.axis, runs.targets.size(), targetsOfTheStandard));
  }
  Distances all;
  for (const auto& target : runs.targets) {
    addDistances(all, target.up);
    addDistances(all, target.down);
  }
  noteOutliers(result, all.values, all.rows, instrument.r,
               say(Text::tr("{0}, distance from the middle of the runs to the same target,"), runs.axis),
               "mm");
}

}  // namespace fettle
