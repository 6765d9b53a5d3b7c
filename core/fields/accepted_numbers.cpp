#include "core/fields/accepted_numbers.h"

#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"

namespace fettle {

bool AcceptedNumbers::has(double number) const {
  return (!minimum || number >= *minimum) && (!maximum || number <= *maximum) &&
         (!whole || number == std::round(number));
}

std::string AcceptedNumbers::words() const {
  const std::string shown = displayUnit(unit);
  const std::string inUnit = shown.empty() ? "" : say(Text::tr(" in {0}"), shown);
  const std::string kind = whole ? Text::tr("a whole number") : Text::tr("a number");
  if (minimum && maximum) {
    return say(Text::tr("{0} from {1} to {2}{3}"), kind, formatNumber(*minimum), formatNumber(*maximum),
               inUnit);
  }
  if (minimum) {
    return say(Text::tr("{0} of {1} or more{2}"), kind, formatNumber(*minimum), inUnit);
  }
  return kind + inUnit;
}

std::string AcceptedNumbers::notANumber(const std::string& given) const {
  return say(Text::tr("{0} is not a number; {1} is needed."), given, words());
}

std::string AcceptedNumbers::notPossible(const std::string& given) const {
  return say(Text::tr("{0} is not possible; {1} is needed."), given, words());
}

std::string wordForNumber(const std::string& setting, const std::string& word, const std::string& unit) {
  const AcceptedNumbers numbers{{}, {}, false, unit};
  return say(Text::tr("As found, {0}: {1}"), setting, numbers.notANumber('"' + word + '"'));
}

}  // namespace fettle
