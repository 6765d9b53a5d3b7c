#include "core/measure/number_text.h"

#include <fast_float/fast_float.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

namespace fettle {
namespace {

constexpr std::string_view kMinusSign = "\u2212";
constexpr std::array<std::string_view, 4> kBlanks = {"\u00a0", "\u202f", "\u2009", "\ufeff"};

bool isBlank(char c) {
  return c == ' ' || c == '\t' || c == '\r' || c == '\n' || c == '\f' || c == '\v';
}

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}

/// Plain decimals of up to 15 digits, as sensors write them by the hundred thousand: the digits as an
/// integer and the power of ten are both exact, so their quotient is the nearest double (IEEE 754, division
/// is correctly rounded). Null for all others, which the library reads.
const char* scanPlainDecimal(const char* first, const char* last, char decimalSign,
                             double& value) noexcept {
  static constexpr std::array<double, 16> powers{1,   1e1, 1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                                 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};
  const bool negative = *first == '-';
  const char* at = negative ? first + 1 : first;
  const char* const begin = at;
  std::uint64_t digits = 0;
  std::ptrdiff_t decimals = 0;
  for (; at != last && isDigit(*at); ++at) {
    digits = digits * 10 + static_cast<std::uint64_t>(*at - '0');
  }
  std::ptrdiff_t count = at - begin;
  if (at != last && *at == decimalSign) {
    const char* const after = ++at;
    for (; at != last && isDigit(*at); ++at) {
      digits = digits * 10 + static_cast<std::uint64_t>(*at - '0');
    }
    decimals = at - after;
    count += decimals;
  }
  const bool hasExponent = at != last && (*at == 'e' || *at == 'E');
  if (count == 0 || count > 15 || hasExponent) {
    return nullptr;
  }
  const double magnitude = static_cast<double>(digits) / powers[static_cast<std::size_t>(decimals)];
  value = negative ? -magnitude : magnitude;
  return at;
}

std::size_t blankAtFront(std::string_view text) {
  if (!text.empty() && isBlank(text.front())) {
    return 1;
  }
  const auto blank =
      std::find_if(kBlanks.begin(), kBlanks.end(), [&](auto wide) { return text.starts_with(wide); });
  return blank == kBlanks.end() ? 0 : blank->size();
}

std::size_t blankAtBack(std::string_view text) {
  if (!text.empty() && isBlank(text.back())) {
    return 1;
  }
  const auto blank =
      std::find_if(kBlanks.begin(), kBlanks.end(), [&](auto wide) { return text.ends_with(wide); });
  return blank == kBlanks.end() ? 0 : blank->size();
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  while (const std::size_t n = blankAtFront(text)) {
    text.remove_prefix(n);
  }
  while (const std::size_t n = blankAtBack(text)) {
    text.remove_suffix(n);
  }
  return text;
}

const char* scanNumber(const char* first, const char* last, char decimalSign, double& value) noexcept {
  if (first != last && *first == '+') {
    ++first;
    if (first != last && *first == '-') {
      return nullptr;
    }
  }
  // Letters are looked at here because the library reads "nan" and "infinity" as numbers.
  const char* digits = first != last && *first == '-' ? first + 1 : first;
  if (digits == last || !(isDigit(*digits) || *digits == decimalSign)) {
    return nullptr;
  }
  if (const char* end = scanPlainDecimal(first, last, decimalSign, value)) {
    return end;
  }
  const fast_float::parse_options options(fast_float::chars_format::general, decimalSign);
  const auto [end, error] = fast_float::from_chars_advanced(first, last, value, options);
  return error == std::errc() && std::isfinite(value) ? end : nullptr;
}

std::optional<double> numberFromText(std::string_view text, char decimalSign) {
  text = trimmed(text);
  double value = 0.0;
  if (text.starts_with(kMinusSign)) {
    text.remove_prefix(kMinusSign.size());
    if (text.empty() || text.front() == '-' || text.front() == '+') {
      return std::nullopt;
    }
    const char* end = scanNumber(text.data(), text.data() + text.size(), decimalSign, value);
    return end == text.data() + text.size() ? std::optional(-value) : std::nullopt;
  }
  const char* end = scanNumber(text.data(), text.data() + text.size(), decimalSign, value);
  return end == text.data() + text.size() ? std::optional(value) : std::nullopt;
}

tl::expected<double, std::string> numberFromKeyboard(std::string_view text) {
  text = trimmed(text);
  if (text.empty()) {
    return tl::unexpected(std::string("Type a number."));
  }
  const auto points = std::count(text.begin(), text.end(), '.');
  const auto commas = std::count(text.begin(), text.end(), ',');
  const auto value = points + commas > 1 ? std::nullopt : numberFromText(text, commas == 1 ? ',' : '.');
  if (value) {
    return *value;
  }
  const bool grouped = points + commas > 1 && text.find_first_not_of("0123456789.,+-") == text.npos;
  return tl::unexpected(
      grouped ? fmt::format("\"{}\" has more than one decimal sign; leave out the grouping of thousands, "
                            "as in 1234.5 or 1234,5.",
                            text)
              : fmt::format("\"{}\" is not a number; type digits with a decimal point or comma, such as "
                            "12.5.",
                            text));
}

}  // namespace fettle
