#pragma once
#include <optional>
#include <string>

#include "core/measure/quantity.h"

namespace fettle {

/// Decimals that show a number of this size to the given significant digits: 0.0184, 2 -> 3; 18.4 -> 0.
/// Between 0 and 9.
int decimalsFor(double size, int significantDigits = 2);

/// A number with a fixed number of decimals, decimal point, minus sign U+2212, never "-0"; from 1e15 on
/// with a power of ten.
std::string formatFixed(double value, int decimals);

/// A number as it was typed: the shortest text that reads back the same, at most 6 decimals; "1e+300"
/// and "1e-09" where digits would not do.
std::string formatNumber(double value);

/// Four significant digits, without zeros at their end, for values whose uncertainty is not known.
std::string formatPlain(double value);

/// "0.412 ± 0.018": both rounded to two significant digits of U (JCGM 100:2008, 7.2.6); with only an
/// interval "10.6 (10.5 … 10.7)"; without uncertainty as formatPlain() and no "± 0", below 1 (except for
/// ratios) three digits.
std::string formatValue(const Quantity& quantity);

/// The same with the unit behind it.
std::string formatQuantity(const Quantity& quantity);

}  // namespace fettle
