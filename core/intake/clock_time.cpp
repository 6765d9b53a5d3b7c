#include "core/intake/clock_time.h"

#include "core/measure/number_text.h"

namespace fettle {
namespace {

constexpr double kDay = 86400.0;

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}

/// One or two digits.
const char* scanPart(const char* at, const char* last, int& value, int fewestDigits) {
  value = 0;
  int digits = 0;
  while (at != last && isDigit(*at) && digits < 2) {
    value = 10 * value + (*at++ - '0');
    ++digits;
  }
  return digits < fewestDigits || (at != last && isDigit(*at)) ? nullptr : at;
}

}  // namespace

const char* scanClockTime(const char* first, const char* last, char decimalSign, double& seconds) noexcept {
  int hours = 0;
  int minutes = 0;
  int whole = 0;
  const char* at = scanPart(first, last, hours, 1);
  if (at == nullptr || at == last || *at != ':') {
    return nullptr;
  }
  at = scanPart(at + 1, last, minutes, 2);
  if (at == nullptr || minutes > 59) {
    return nullptr;
  }
  double fraction = 0.0;
  if (at != last && *at == ':') {
    at = scanPart(at + 1, last, whole, 2);
    if (at == nullptr || whole > 59) {
      return nullptr;
    }
    if (at + 1 < last && (*at == '.' || *at == decimalSign) && isDigit(at[1])) {
      const char* end = at + 1;
      while (end != last && isDigit(*end)) {
        ++end;
      }
      if (scanNumber(at, end, *at, fraction) != end) {
        return nullptr;
      }
      at = end;
    }
  }
  seconds = 3600.0 * hours + 60.0 * minutes + whole + fraction;
  return at;
}

std::optional<double> clockTimeFromText(std::string_view text, char decimalSign) {
  text = trimmed(text);
  double seconds = 0.0;
  const char* end = text.data() + text.size();
  return scanClockTime(text.data(), end, decimalSign, seconds) == end ? std::optional(seconds)
                                                                      : std::nullopt;
}

double ElapsedClock::elapsed(double secondsOfDay) {
  if (!m_first) {
    m_first = secondsOfDay;
  } else if (secondsOfDay < m_previous - kDay / 2) {
    m_days += kDay;
  }
  m_previous = secondsOfDay;
  return m_days + secondsOfDay - *m_first;
}

}  // namespace fettle
