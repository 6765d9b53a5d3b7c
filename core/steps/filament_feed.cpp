#include "core/steps/filament_feed.h"

#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/filament_feed/charts.h"

namespace fettle {
namespace {

void giveFeed(StepResult& result, const StepContext& context, const Quantity& ratio) {
  const auto asFound = context.asFoundNumber("feed_steps_per_mm");
  if (!asFound || *asFound <= 0) {
    result.withhold("feed_steps_per_mm", "1/mm", Text::tr("the steps per mm as found are not known"));
    return;
  }
  Quantity feed = ratio;
  feed.unit = "1/mm";
  feed.value = *asFound / ratio.value;
  feed.u = feed.value * *ratio.u / ratio.value;
  result.give("feed_steps_per_mm", feed);
  result.propose("feed_steps_per_mm", context.asFoundValue("feed_steps_per_mm"), feed);
  if (std::abs(ratio.value - 1) <= *expandedUncertainty(ratio)) {
    result.addFinding(
        "feed-as-it-is", Severity::note,
        say(Text::tr("Drawn and commanded length agree within the uncertainty: {0}. These draws "
                     "give no reason to change the feed; more and longer ones tell smaller errors."),
            formatValue(ratio)));
  }
}

void giveMoisture(StepResult& result, const FilamentFeedInputs& inputs, const StepContext& context) {
  if (!inputs.massBefore || !inputs.massAfter) {
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
  result.give("moisture_lost", lost);
  if (lost.value < -*expandedUncertainty(lost)) {
    result.addFinding(
        "mass-gained", Severity::caution,
        say(Text::tr("The filament weighs more after drying: {0} g before, {1} g after. Weigh the same "
                     "things both times, before it takes up water again."),
            formatNumber(*inputs.massBefore), formatNumber(*inputs.massAfter)));
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

}  // namespace

void FilamentFeedInputs::describe(FieldList& fields) {
  fields.table("draws", draws, Text::tr("Draws"))
      .help(Text::tr("Two speeds or more, three draws of each; 100 mm or more each time."));
  fields.table("filament_diameters", diameters, Text::tr("Filament diameters"))
      .help(Text::tr("Five places along a few metres, each in two directions."));
  fields.text("lot", lot, Text::tr("Lot")).help(Text::tr("Of the filament, as printed on the spool."));
  fields.number("drying_C", dryingTemperature, Text::tr("Dried at"), "C").bounds(20, 150);
  fields.number("drying_h", dryingTime, Text::tr("Dried for"), "h").bounds(0, 200);
  fields.number("mass_before_g", massBefore, Text::tr("Mass before drying"), "g")
      .bounds(0.1, 20000)
      .readWith(instruments::pocketScale())
      .help(Text::tr("Of spool and filament, or of a piece of filament alone."));
  fields.number("mass_after_g", massAfter, Text::tr("Mass after drying"), "g")
      .bounds(0.1, 20000)
      .readWith(instruments::pocketScale());
}

StepResult evaluate(const FilamentFeedInputs& inputs, const StepContext& context) {
  StepResult result;
  DrawPicture picture;
  const auto ratio = giveDraws(result, inputs.draws, context, picture);
  if (ratio) {
    giveFeed(result, context, *ratio);
    giveDiameters(result, inputs.diameters, context);
    giveMoisture(result, inputs, context);
    noteChecks(result, context);
  }
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
  step.headline = {"feed_steps_per_mm"};
  step.results = {
      {"feed_steps_per_mm", "1/mm", Text::tr("Feed steps per mm")},
      {"drawn_ratio", "1", Text::tr("Drawn / commanded"), {}, true},
      {"speed_<k>.speed", "mm/s", Text::tr("Speed")},
      {"speed_<k>.drawn_ratio", "1", Text::tr("Drawn / commanded")},
      {"speed_<k>.slip", "1", Text::tr("Slip, share of what the slowest speed draws")},
      {"diameter_mean", "mm", Text::tr("Filament diameter"), {}, true},
      {"ovality", "mm", Text::tr("Ovality"), {}, true},
      {"flow_effect", "1", Text::tr("Flow above nominal / nominal")},
      {"moisture_lost", "%", Text::tr("Mass lost by drying")},
  };
  step.settings = {{"feed_steps_per_mm", Text::tr("Feed steps per mm"), "1/mm"}};
  step.emptyCharts = filamentFeedCharts({}, {}, std::nullopt);
  return withInputs<FilamentFeedInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
