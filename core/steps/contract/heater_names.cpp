#include "core/steps/contract/heater_names.h"

#include <algorithm>

#include "core/measure/text.h"

namespace fettle {

std::vector<Choice> heaterChoices() {
  return {{"hot_end", Text::tr("Hot end")}, {"bed", Text::tr("Bed")}, {"chamber", Text::tr("Chamber")}};
}

std::string heaterLabel(const std::string& heater) {
  const auto choices = heaterChoices();
  const auto found = std::find_if(choices.begin(), choices.end(),
                                  [&](const Choice& choice) { return choice.key == heater; });
  return found == choices.end() ? heater : found->label;
}

}  // namespace fettle
