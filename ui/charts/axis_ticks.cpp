#include "ui/charts/axis_ticks.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/measure/format.h"
#include "core/measure/unit.h"

namespace fettle::ui {
namespace {

/// Beyond these all labels of an axis are written with powers of ten.
constexpr int longestDecimals = 4;
constexpr double longestPlain = 1e6, shortestPlain = 1e-3;

QString shown(double value, int decimals) {
  return QString::fromStdString(formatFixed(value, decimals));
}

QString superscript(int exponent) {
  static const QString digits = QStringLiteral("⁰¹²³⁴⁵⁶⁷⁸⁹");
  QString text = exponent < 0 ? QStringLiteral("⁻") : QString();
  for (const QChar digit : QString::number(std::abs(exponent))) {
    text += digits.at(digit.digitValue());
  }
  return text;
}

int exponentOf(double value) {
  return static_cast<int>(std::floor(std::log10(std::abs(value)) + 1e-9));
}

QString powerText(double value, int digits) {
  const int exponent = exponentOf(value);
  const QString mantissa = shown(value / std::pow(10, exponent), digits);
  const QString power = QStringLiteral("10") + superscript(exponent);
  return mantissa == QLatin1String("1") ? power : mantissa + QStringLiteral("·") + power;
}

double niceStep(double atLeast) {
  const double power = std::pow(10, std::floor(std::log10(atLeast)));
  for (const double factor : {1.0, 2.0, 5.0}) {
    if (factor * power >= atLeast * (1 - 1e-9)) {
      return factor * power;
    }
  }
  return 10 * power;
}

int decimalsOfStep(double step) {
  return std::clamp(-exponentOf(step), 0, 12);
}

QString evenText(double value, double step, bool isLong) {
  return isLong && value != 0 ? powerText(value, std::max(exponentOf(value) - exponentOf(step), 0))
                              : shown(value, isLong ? 0 : decimalsOfStep(step));
}

void keepEvery(QStringList& labels, int maximum) {
  const auto stride = (labels.size() + maximum - 1) / std::max(maximum, 1);
  for (qsizetype i = 0; i < labels.size(); ++i) {
    if (stride > 1 && i % stride != 0) {
      labels[i].clear();
    }
  }
}

/// Marks at whole numbers, with the names of the things 1, 2, 3 …, where they have some.
Ticks wholeTicks(Range range, int maximum, const std::vector<std::string>& names) {
  Ticks ticks;
  const double step = std::max(1.0, niceStep(std::max(range.size(), 1.0) / std::max(maximum, 1)));
  for (double at = std::ceil(range.from / step) * step; at <= range.to; at += step) {
    const double place = at - 1;
    const bool isNamed = place >= 0 && place < static_cast<double>(names.size());
    if (isNamed || names.empty()) {
      ticks.at.push_back(at);
      ticks.labels << (isNamed ? QString::fromStdString(names[static_cast<std::size_t>(place)])
                               : shown(at, 0));
    }
  }
  return ticks;
}

}  // namespace

Ticks evenTicks(Range range, int maximum) {
  Ticks ticks;
  if (!(range.size() > 0)) {
    return ticks;
  }
  double step = niceStep(range.size() / maximum);
  const auto first = [&] { return std::ceil(range.from / step - 1e-9); };
  const auto last = [&] { return std::floor(range.to / step + 1e-9); };
  while (last() - first() + 1 > maximum) {
    step = niceStep(step * 1.5);
  }
  ticks.decimals = decimalsOfStep(step);
  const double largest = std::max(std::abs(range.from), std::abs(range.to));
  const bool isLong = ticks.decimals > longestDecimals || largest >= longestPlain;
  const auto count = static_cast<int>(last() - first()) + 1;
  for (int i = 0; i < count; ++i) {
    ticks.at.push_back((first() + i) * step);
    ticks.labels << evenText(ticks.at.back(), step, isLong);
  }
  return ticks;
}

Ticks logarithmicTicks(Range range, int maximum) {
  if (!(range.from > 0) || !(range.to > range.from)) {
    return {};
  }
  const int first = exponentOf(range.from), last = exponentOf(range.to);
  const double decades = std::log10(range.to / range.from);
  const bool isPlain = range.from >= shortestPlain && range.to < longestPlain;
  Ticks ticks;
  for (int exponent = first; exponent <= last; ++exponent) {
    for (const int factor : {1, 2, 5}) {
      const double value = factor * std::pow(10, exponent);
      if (!range.contains(value) || (factor != 1 && decades * 3 > maximum)) {
        continue;
      }
      ticks.at.push_back(value);
      ticks.labels << (isPlain ? shown(value, std::max(-exponent, 0)) : powerText(value, 0));
    }
  }
  if (ticks.at.size() < 3) {
    return evenTicks(range, maximum);
  }
  ticks.decimals = std::clamp(-first, 0, 12);
  keepEvery(ticks.labels, maximum);
  return ticks;
}

Ticks ticksOf(const Axis& axis, Range range, int maximum) {
  if (axis.whole) {
    return wholeTicks(range, maximum, axis.names);
  }
  return axis.logarithmic ? logarithmicTicks(range, maximum) : evenTicks(range, maximum);
}

QString axisTitle(const Axis& axis) {
  const QString label = QString::fromStdString(axis.label);
  const QString unit = QString::fromStdString(displayUnit(axis.unit));
  return unit.isEmpty() ? label : label + QStringLiteral(", ") + unit;
}

QString valueText(double value, const Axis& axis, const Ticks& ticks) {
  if (axis.whole && value == std::round(value)) {
    const Ticks here = wholeTicks({value, value}, 1, axis.names);
    return here.labels.isEmpty() ? shown(value, 0) : here.labels.front();
  }
  const QString unit = QString::fromStdString(displayUnit(axis.unit));
  const bool isPlain = !axis.logarithmic && ticks.decimals <= longestDecimals;
  const QString number = isPlain      ? shown(value, ticks.decimals + 2)
                         : value == 0 ? shown(value, 0)
                         : std::abs(value) >= shortestPlain && std::abs(value) < longestPlain
                             ? QString::fromStdString(formatPlain(value))
                             : powerText(value, 3);
  return unit.isEmpty() ? number : number + QChar(QChar::Nbsp) + unit;
}

}  // namespace fettle::ui
