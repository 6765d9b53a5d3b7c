#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/measure/capture.h"
#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/heater_control/inputs.h"

namespace fettle {

/// The test is broken off at this share of the highest temperature allowed; common practice, no source.
inline constexpr double breakOffShare = 0.95;

/// Rows of a heater's log. Columns the file does not have are empty, and so are those that were refused.
struct HeaterLog {
  std::vector<double> time, temperature, duty, target;
  std::string dutyRefused, targetRefused;  ///< why; empty for a column that was not refused

  std::size_t rows() const { return time.size(); }
  double lasts() const { return time.back() - time.front(); }
  /// Median distance of two rows, s.
  double interval() const;
};

/// The log of a capture, time counted from its first row. Throws Refusal for fewer than ten rows, time that
/// does not rise or a temperature nobody could have: row, value, what is accepted. A duty outside 0 to 1
/// and such a target refuse their column only: what does not need it stays.
HeaterLog heaterLogOf(const Capture& capture);

/// First rows at which the duty is no longer what it was since the change before, by more than 0.02.
std::vector<std::size_t> dutyChanges(const std::vector<double>& duty);

/// Highest temperature the heater is allowed: typed, else that of the sheet; none when it was refused.
std::optional<double> allowedMaximum(const HeaterControlInputs& inputs, const StepContext& context);

/// Adds what the log says by itself: the columns that were refused, the fault `over-limit` where it goes
/// beyond 0.95 of the maximum, and `limit-not-checked` where no maximum is known.
void noteLog(StepResult& result, const HeaterLog& log, std::optional<double> maximum);

}  // namespace fettle
