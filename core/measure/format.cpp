#include "core/measure/format.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/measure/unit.h"

namespace fettle {
namespace {

constexpr const char* minusSign = "\u2212";
constexpr double tooLongForDigits = 1e15, leastSixDecimalsShow = 5e-7;

std::string withMinusSign(std::string text) {
  if (text.empty() || text[0] != '-') {
    return text;
  }
  const bool isZero = text.find_first_of("123456789") == std::string::npos;
  return isZero ? text.substr(1) : minusSign + text.substr(1);
}

std::string withoutTrailingZeros(std::string text) {
  if (text.find('.') == std::string::npos || text.find('e') != std::string::npos) {
    return text;  // whole, or with a power of ten, which "{:g}" writes short
  }
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') {
    text.pop_back();
  }
  return text;
}

}  // namespace

int decimalsFor(double size, int significantDigits) {
  if (!(std::abs(size) > 0) || !std::isfinite(size)) {
    return 0;
  }
  const double magnitude = std::floor(std::log10(std::abs(size)) + 1e-12);
  int decimals = significantDigits - 1 - static_cast<int>(magnitude);
  // 0.0996 to two digits is 0.10, one decimal less than its size suggests.
  const double rounded = std::round(std::abs(size) * std::pow(10, decimals)) / std::pow(10, decimals);
  if (std::floor(std::log10(rounded) + 1e-12) > magnitude) {
    --decimals;
  }
  return std::clamp(decimals, 0, 9);
}

std::string formatFixed(double value, int decimals) {
  if (std::abs(value) >= tooLongForDigits) {
    return withMinusSign(fmt::format("{:g}", value));
  }
  return withMinusSign(fmt::format("{:.{}f}", value, decimals));
}

std::string formatNumber(double value) {
  const double size = std::abs(value);
  if (size >= tooLongForDigits || (size > 0 && size < leastSixDecimalsShow)) {
    return withMinusSign(fmt::format("{:g}", value));
  }
  return withMinusSign(withoutTrailingZeros(fmt::format("{:.6f}", value)));
}

std::string formatPlain(double value) {
  return withoutTrailingZeros(formatFixed(value, std::min(decimalsFor(value, 4), 6)));
}

std::string formatValue(const Quantity& quantity) {
  const auto expanded = expandedUncertainty(quantity);
  if (expanded && *expanded > 0) {
    const int decimals = decimalsFor(*expanded);
    return formatFixed(quantity.value, decimals) + " ± " + formatFixed(*expanded, decimals);
  }
  if (quantity.low && quantity.high) {
    const double half = std::max(*quantity.high - *quantity.low, 0.0) / 2;
    const int decimals = half > 0 ? decimalsFor(half) : decimalsFor(quantity.value, 4);
    return fmt::format("{} ({} … {})", formatFixed(quantity.value, decimals),
                       formatFixed(*quantity.low, decimals), formatFixed(*quantity.high, decimals));
  }
  const bool isSmall = std::abs(quantity.value) < 1 && quantity.unit != "1";
  return isSmall ? withoutTrailingZeros(formatFixed(quantity.value, decimalsFor(quantity.value, 3)))
                 : formatPlain(quantity.value);
}

std::string formatQuantity(const Quantity& quantity) {
  return withUnit(formatValue(quantity), quantity.unit);
}

}  // namespace fettle
