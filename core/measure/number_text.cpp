#include "core/measure/number_text.h"

#include <fast_float/fast_float.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace fettle {
namespace {

constexpr std::string_view kMinusSign = "\u2212";
constexpr std::array<std::string_view, 4> kBlanks = {"\u00a0", "\u202f", "\u2009", "\ufeff"};

bool isBlank(char c) {
  return c == ' ' || c == '\t' || c == '\r' || c == '\n' || c == '\f' || c == '\v';
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
  if (digits == last || !((*digits >= '0' && *digits <= '9') || *digits == decimalSign)) {
    return nullptr;
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
