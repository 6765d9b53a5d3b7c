#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/steps/heater_control.h"

namespace fettle {

/// The test is broken off at this share of the highest temperature allowed; common practice, no source.
inline constexpr double breakOffShare = 0.95;

/// Rows of a heater's log. Columns the file does not have are empty.
struct HeaterLog {
  std::vector<double> time, temperature, duty, target;

  std::size_t rows() const { return time.size(); }
  double lasts() const { return time.back() - time.front(); }
  /// Median distance of two rows, s.
  double interval() const;
};

/// The log of a capture, time counted from its first row. Throws Refusal for fewer than ten rows, time that
/// does not rise, a duty outside 0 to 1 or a temperature nobody could have: row, value, what is accepted.
HeaterLog heaterLogOf(const Capture& capture);

/// First rows at which the duty is no longer what it was since the change before, by more than 0.02.
std::vector<std::size_t> dutyChanges(const std::vector<double>& duty);

/// Highest temperature the heater is allowed: typed, else that of the sheet.
std::optional<double> allowedMaximum(const HeaterControlInputs& inputs, const StepContext& context);

/// Adds the fault `over-limit` when the log goes beyond 0.95 of the maximum.
void noteOverLimit(StepResult& result, const HeaterLog& log, std::optional<double> maximum);

/// "hot_end." + name.
std::string idOf(const std::string& heater, const std::string& name);

}  // namespace fettle
