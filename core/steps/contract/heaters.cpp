#include "core/steps/contract/heaters.h"

#include <algorithm>

#include "core/measure/text.h"

namespace fettle {

std::vector<Choice> heaterChoices() {
  return {{"hot_end", Text::tr("Hot end")}, {"bed", Text::tr("Bed")}, {"chamber", Text::tr("Chamber")}};
}

std::string heaterName(const std::string& key) {
  const auto choices = heaterChoices();
  const auto found =
      std::find_if(choices.begin(), choices.end(), [&](const Choice& choice) { return choice.key == key; });
  return found == choices.end() ? key : found->label;
}

double riseWindowOf(const std::string& heater) {
  return heater == "hot_end" ? 15 : heater == "chamber" ? 300 : 90;  // common practice, no source
}

void HeaterInput::describeHeater(FieldList& fields) {
  fields.choice("heater", heater, Text::tr("Heater"), heaterChoices())
      .help(Text::tr("Blank: what the run is about."));
}

std::string HeaterInput::heaterOf(const StepContext& context) const {
  return heater.empty() ? context.subject : heater;
}

void HeaterInput::noteOtherHeater(StepResult& result, const StepContext& context) const {
  if (!heater.empty() && !context.subject.empty() && heater != context.subject) {
    result.addFinding(
        "other-heater", Severity::caution,
        say(Text::tr("The run is about {0}, the entry says {1}; the results are named after the "
                     "entry."),
            heaterName(context.subject), heaterName(heater)));
  }
}

}  // namespace fettle
