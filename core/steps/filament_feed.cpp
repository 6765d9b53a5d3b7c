#include "core/steps/filament_feed.h"

#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/filament_feed/charts.h"
#include "core/steps/filament_feed/diameters.h"
#include "core/steps/filament_feed/draws.h"
#include "core/steps/filament_feed/results.h"

namespace fettle {
namespace {

void giveFeed(StepResult& result, const StepContext& context, const Quantity& ratio) {
  const auto& key = keysOf<FilamentFeedResults>();
  const auto inForce = context.inForceNumber(key.feedSetting);
  if (!inForce || *inForce <= 0) {
    result.withhold(key.feed, Text::tr("the feed steps per mm in force are not known"));
    return;
  }
  Quantity feed = ratio;
  feed.unit = "1/mm";
  feed.value = *inForce / ratio.value;
  feed.u = feed.value * *ratio.u / ratio.value;
  result.give(key.feed, feed);
  result.propose(key.feedSetting, feed);
  if (std::abs(ratio.value - 1) <= *expandedUncertainty(ratio)) {
    result.addFinding(
        "feed-as-it-is", Severity::note,
        say(Text::tr("Drawn and commanded length agree within the uncertainty: {0}. These draws "
                     "give no reason to change the feed; more and longer ones tell smaller errors."),
            formatValue(ratio)));
  }
}

void giveMoisture(StepResult& result, const FilamentFeedInputs& inputs, const StepContext& context) {
  const auto& key = keysOf<FilamentFeedResults>();
  if (!inputs.massBefore || !inputs.massAfter) {
    if (inputs.massBefore || inputs.massAfter) {
      result.withhold(key.moistureLost, Text::tr("needs the mass before and after drying"));
    }
    return;
  }
  const Instrument& before = context.instrument("mass_before_g");
  const Instrument& after = context.instrument("mass_after_g");
  std::vector<Contribution> parts{{std::hypot(before.r, after.r) / std::sqrt(12.0)}};
  if (before != after) {
    parts.push_back(
        {std::hypot(before.limitOfError(*inputs.massBefore), after.limitOfError(*inputs.massAfter)) /
         std::sqrt(3.0)});
  }
  const double toPercent = 100 / *inputs.massBefore;
  for (auto& part : parts) {
    part.u *= toPercent;
  }
  const Quantity lost = combinedQuantity((*inputs.massBefore - *inputs.massAfter) * toPercent, "%", parts);
  result.give(key.moistureLost, lost);
  if (lost.value < -*expandedUncertainty(lost)) {
    result.addFinding(
        "mass-gained", Severity::caution,
        say(Text::tr("The filament weighs more after drying: {0} g before, {1} g after. Weigh the same "
                     "things both times, before it takes up water again."),
            formatNumber(*inputs.massBefore), formatNumber(*inputs.massAfter)),
        {}, "mass_after_g");
  }
}

void noteChecks(StepResult& result, const StepContext& context) {
  std::string text = Text::tr(
      "Before the figure is kept: idler tension bites without flattening the filament, "
      "the spool turns freely, the nozzle's bore is clear and of the size on the sheet.");
  if (context.sheet.feeder == "tube") {
    text += ' ';
    text += Text::tr("The tube is seated at both ends and does not move in its fittings.");
  }
  result.addFinding("feed-path", Severity::note, text);
}

/// Six draws at two speeds that any hot end melts; common practice, no source.
Json sixDraws(const Json& /*inputs*/, const StepContext& /*context*/) {
  Json rows = Json::array();
  for (int repeat = 0; repeat < 3; ++repeat) {
    for (const double speed : {1.0, 3.0}) {
      rows.push_back({{"commanded_mm", 100.0}, {"speed_mm_s", speed}});
    }
  }
  return rows;
}

}  // namespace

StepResult evaluate(const FilamentFeedInputs& inputs, const StepContext& context) {
  const auto& key = keysOf<FilamentFeedResults>();
  StepResult result;
  DrawPicture picture;
  result.attempt({key.feed, key.drawnRatio}, [&] {
    if (const auto ratio = giveDraws(result, inputs.draws, context, picture)) {
      giveFeed(result, context, *ratio);
      noteChecks(result, context);
    }
  });
  giveDiameters(result, inputs.diameters, context);
  giveMoisture(result, inputs, context);
  result.charts = filamentFeedCharts(picture, inputs.diameters, context.sheet.filament);
  return result;
}

Step filamentFeedStep() {
  Step step;
  step.key = "filament-feed";
  step.name = Text::tr("Filament feed");
  step.purpose = Text::tr("How much filament the feeder draws for each step, and how thick it is.");
  step.stage = Stage::plastic;
  step.heats = true;
  step.moves = true;
  step.caution = Text::tr("Hot nozzle; gears that draw filament also draw fingers, hair and sleeves.");
  step.benchMinutes = 20;
  step.waitMinutes = 5;
  step.readsSheet = {"filament_mm", "feeder"};
  step.plans = {{"two-speeds", Text::tr("Six draws at two speeds"), "draws", &sixDraws}};
  step.emptyCharts = filamentFeedCharts({}, {}, std::nullopt);
  return describedStep<FilamentFeedResults, FilamentFeedInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
