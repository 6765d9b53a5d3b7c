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

}  // namespace fettle
