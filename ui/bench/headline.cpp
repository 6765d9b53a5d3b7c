#include "ui/bench/headline.h"

#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/unit.h"

namespace fettle::ui {
namespace {

QString shortValue(const Quantity& quantity) {
  const auto half = halfInterval(quantity);
  const int decimals = half && *half > 0 ? decimalsFor(*half, 1) : decimalsFor(quantity.value, 3);
  return QString::fromStdString(formatFixed(quantity.value, std::min(decimals, 3)));
}

}  // namespace

QString headlineOf(const Step& step, const StepResult& result) {
  QStringList values;
  std::string unit;
  for (const auto& pattern : step.headline) {
    for (const auto& value : result.values) {
      if (value.quantity && matchesPattern(value.id, pattern) && values.size() < 2) {
        values << shortValue(*value.quantity);
        unit = value.unit;
      }
    }
  }
  if (values.isEmpty()) {
    return {};
  }
  const QString shownUnit = QString::fromStdString(displayUnit(unit));
  // Two values fill the line; their unit stands on the step's page.
  const bool withUnit = values.size() == 1 && !shownUnit.isEmpty();
  return values.join(QStringLiteral(", ")) + (withUnit ? " " + shownUnit : QString());
}

int countFindings(const StepResult& result, Severity severity) {
  return static_cast<int>(
      std::count_if(result.findings.begin(), result.findings.end(),
                    [&](const Finding& finding) { return finding.severity == severity; }));
}

}  // namespace fettle::ui
