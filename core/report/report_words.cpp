#include "core/report/report_words.h"

#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"
#include "core/steps/contract/wording.h"

namespace fettle {

std::string dayOf(const std::string& date) {
  return date.substr(0, 10);
}

std::string minuteOf(const std::string& date) {
  std::string text = date.substr(0, 16);
  std::replace(text.begin(), text.end(), 'T', ' ');
  return text;
}

std::string headOf(const std::string& label, const std::string& unit) {
  const std::string shown = displayUnit(unit);
  return shown.empty() ? label : label + ", " + shown;
}

std::string entryText(const Field& field, const Json& value) {
  if (value.is_null()) {
    return {};
  }
  if (value.is_number()) {
    return formatNumber(value.get<double>());
  }
  if (value.is_boolean()) {
    return value.get<bool>() ? Text::tr("yes") : Text::tr("no");
  }
  if (value.is_string()) {
    const auto key = value.get<std::string>();
    const auto choice = std::find_if(field.choices.begin(), field.choices.end(),
                                     [&](const Choice& known) { return known.key == key; });
    return choice == field.choices.end() ? key : choice->label;
  }
  if (value.is_object() && value.contains("file") && value["file"].is_string()) {
    return value["file"].get<std::string>();
  }
  return value.dump();
}

std::string verdictText(Verdict verdict) {
  switch (verdict) {
    case Verdict::pass:
      return "✓ " + verdictWord(verdict);
    case Verdict::undecided:
      return "? " + verdictWord(verdict);
    case Verdict::fail:
      return "✕ " + verdictWord(verdict);
    case Verdict::none:
      break;
  }
  return verdictWord(verdict);
}

std::string severityText(Severity severity) {
  switch (severity) {
    case Severity::fault:
      return Text::tr("✕ Fault");
    case Severity::caution:
      return Text::tr("! Caution");
    case Severity::note:
      break;
  }
  return Text::tr("i Note");
}

std::string toleranceText(const Tolerance& tolerance, const std::string& unit) {
  std::string text;
  if (tolerance.low && tolerance.high) {
    text = formatNumber(*tolerance.low) + " … " + formatNumber(*tolerance.high);
  } else if (tolerance.high) {
    text = "≤ " + formatNumber(*tolerance.high);
  } else if (tolerance.low) {
    text = "≥ " + formatNumber(*tolerance.low);
  }
  return withUnit(text, unit);
}

std::string settingText(const SettingValue& value, const std::optional<double>& U,
                        const std::string& unit) {
  if (!value.number) {
    return value.text;
  }
  if (!U || *U <= 0) {
    return withUnit(formatNumber(*value.number), unit);
  }
  const int decimals = decimalsFor(*U);
  return withUnit(formatFixed(*value.number, decimals) + " ± " + formatFixed(*U, decimals), unit);
}

std::string headlineText(const Step& step, const StepResult& result) {
  const Wording wording(step, &result);
  std::string text;
  std::size_t count = 0;
  for (const auto& pattern : step.headline) {
    for (const auto& value : result.values) {
      if (value.quantity && matchesPattern(value.id, pattern) && count < 2) {
        text +=
            (count++ == 0 ? "" : "\n") + wording.label(value.id) + ": " + formatQuantity(*value.quantity);
      }
    }
  }
  return text;
}

}  // namespace fettle
