#pragma once
#include <optional>
#include <string_view>

namespace fettle {

/// Reads a time of day "14:05", "14:05:00" or "14:05:00.5" (point or decimal sign) at the start of
/// [first, last). Hours run to 99 for logs that count elapsed time.
/// @return where reading stopped, or nullptr; `seconds` counts from 00:00
const char* scanClockTime(const char* first, const char* last, char decimalSign, double& seconds) noexcept;

/// The clock time that fills the whole text, in seconds from 00:00.
std::optional<double> clockTimeFromText(std::string_view text, char decimalSign);

/// Turns the clock times of a log into seconds from its first row, past midnight too: a time more than
/// twelve hours before the one in front of it belongs to the next day.
class ElapsedClock {
 public:
  double elapsed(double secondsOfDay);

 private:
  std::optional<double> m_first;
  double m_previous = 0.0;
  double m_days = 0.0;
};

}  // namespace fettle
