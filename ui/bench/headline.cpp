#include "ui/bench/headline.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

#include "core/measure/format.h"
#include "core/measure/unit.h"

namespace fettle::ui {
namespace {

struct HeadlineWords {
  Q_DECLARE_TR_FUNCTIONS(fettle::ui::HeadlineWords)
};

constexpr qsizetype mostValues = 3;
constexpr int mostDecimals = 3;

QString shortValue(const Quantity& quantity) {
  const auto half = halfInterval(quantity);
  const bool isCount = quantity.unit == "1" && quantity.value == std::round(quantity.value);
  const int seen = isCount ? 0 : decimalsFor(quantity.value, 3);
  const int told = half && *half > 0 ? decimalsFor(*half) : seen;
  return QString::fromStdString(
      formatFixed(quantity.value, std::min({told, quantity.value == 0 ? told : seen, mostDecimals})));
}

}  // namespace

QString headlineOf(const Step& step, const StepResult& result) {
  QStringList values;
  std::string unit;
  for (const auto& pattern : step.headline) {
    for (const auto& value : result.values) {
      const bool isFirst = values.isEmpty();
      if (value.quantity && matchesPattern(value.id, pattern) && (isFirst || value.unit == unit)) {
        values << shortValue(*value.quantity);
        unit = value.unit;
      }
    }
  }
  if (values.isEmpty() || values.size() > mostValues) {
    return {};
  }
  const QString shownUnit = QString::fromStdString(displayUnit(unit));
  return values.join(QStringLiteral(", ")) + (shownUnit.isEmpty() ? QString() : " " + shownUnit);
}

int countFindings(const StepResult& result, Severity severity) {
  return static_cast<int>(
      std::count_if(result.findings.begin(), result.findings.end(),
                    [&](const Finding& finding) { return finding.severity == severity; }));
}

QString faultsInWords(int faults) {
  return faults == 1 ? HeadlineWords::tr("1 fault") : HeadlineWords::tr("%1 faults").arg(faults);
}

}  // namespace fettle::ui
