#include "core/steps/safety/earth.h"

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/result_name.h"
#include "core/steps/safety/results.h"

namespace fettle {
namespace {

/// What one earth reading says against the bond; empty when it passes.
std::string earthDoubt(StepResult& result, const EarthReading& row, const Quantity& ohm,
                       const Tolerance& limit, const Instrument& tester) {
  const std::string& part = row.part;
  const std::string at = fmt::format("earth[{}]", row.number);
  const std::string allowed = formatNumber(limit.high.value_or(earthLimit));
  const Judgement judgement = judge(ohm, limit);
  if (judgement.verdict == Verdict::fail) {
    result.addFinding(
        "earth-high", Severity::fault,
        say(Text::tr("{0}: {1} to earth, {2} Ω allowed. A fault to this part would not blow the "
                     "fuse; the part would be live. A qualified person mends it before power-up."),
            part, formatQuantity(ohm), allowed),
        {}, at);
    return say(Text::tr("earth bond: {0} reads {1}"), part, formatQuantity(ohm));
  }
  if (judgement.verdict == Verdict::undecided) {
    const Instrument better = instruments::lowOhmTester();
    const bool coarse = tester.standardUncertainty(ohm.value) > better.standardUncertainty(ohm.value);
    result.addFinding(
        "earth-undecided", Severity::caution,
        say(Text::tr("{0}: {1} to earth is too near to the limit of {2} Ω for this instrument. {3}"), part,
            formatQuantity(ohm), allowed,
            coarse ? Text::tr("A four-wire low-ohm tester with its leads subtracted would decide.")
                   : Text::tr("Clean and tighten the bond, and read again.")),
        {}, at);
    return say(Text::tr("earth bond: {0} not decided"), part);
  }
  return {};
}

Quantity earthReading(double ohm, const StepContext& context) {
  const double reading[] = {ohm};
  return meanOfReadings(reading, context.instrument("earth.ohm"), "ohm");
}

}  // namespace

std::vector<std::string> judgeEarth(StepResult& result, const std::vector<EarthReading>& parts,
                                    const StepContext& context,
                                    const std::function<Tolerance(const ResultId&)>& toleranceOf) {
  std::vector<std::string> doubts;
  DistinctNames names;
  for (const auto& row : included(parts)) {
    const Quantity ohm = earthReading(*row.ohm, context);
    const ResultId id = keysOf<SafetyResults>().earth(Name(names.next(row.part), row.part));
    result.give(id, ohm);
    auto doubt = earthDoubt(result, row, ohm, toleranceOf(id), context.instrument("earth.ohm"));
    if (!doubt.empty()) {
      doubts.push_back(std::move(doubt));
    }
  }
  return doubts;
}

Chart earthChart(const std::vector<EarthReading>& parts, const Tolerance& allowed,
                 const StepContext& context) {
  Chart chart;
  chart.view = "earth";
  chart.title = Text::tr("Earth bond");
  chart.x = countedAxis(Text::tr("part"));
  chart.y = {Text::tr("resistance to earth"), "ohm"};
  chart.whenEmpty = Text::tr("Enter the resistance from the earth pin to each touchable metal part.");
  Series points, excluded;
  points.name = Text::tr("parts");
  excluded.name = Text::tr("excluded");
  excluded.role = SeriesRole::excluded;
  std::vector<double> expanded;
  for (const auto& row : parts) {
    chart.x.nameThing(row.number, row.part);
    if (row.ohm) {
      Series& series = row.excluded ? excluded : points;
      series.x.push_back(static_cast<double>(row.number));
      series.y.push_back(*row.ohm);
      if (!row.excluded) {
        expanded.push_back(expandedUncertainty(earthReading(*row.ohm, context)).value_or(0));
      }
    }
  }
  if (points.x.empty()) {
    return chart;
  }
  addWithUncertainty(chart, std::move(points), expanded);
  if (!excluded.x.empty()) {
    chart.series.push_back(std::move(excluded));
  }
  if (allowed.high) {
    chart.lines.push_back(
        {say(Text::tr("limit {0} Ω"), formatNumber(*allowed.high)), *allowed.high, false});
  }
  return chart;
}

}  // namespace fettle
