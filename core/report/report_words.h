#pragma once
#include <optional>
#include <string>

#include "core/history/history.h"
#include "core/steps/contract/step.h"

namespace fettle {

// Short texts of the report.

/// "2026-11-25" of a date with a time; empty of an empty one.
std::string dayOf(const std::string& date);
/// "2026-11-25 14:05".
std::string minuteOf(const std::string& date);

/// "Nozzle x, mm": for the head of a column.
std::string headOf(const std::string& label, const std::string& unit);

/// An input as it was entered: a number, the label of a choice, yes or no, the name of a file.
std::string entryText(const Field& field, const Json& value);

/// "✓ pass", "? undecided", "✕ fail"; the word alone without a limit.
std::string verdictText(Verdict verdict);

/// "✕ Fault", "! Caution", "i Note".
std::string severityText(Severity severity);

/// "≤ 0.1 mm", "0.98 … 1.02"; empty without a limit.
std::string toleranceText(const Tolerance& tolerance, const std::string& unit);

/// A setting with two digits of U, or as it was typed.
std::string settingText(const SettingValue& value, const std::optional<double>& U, const std::string& unit);

/// The headline values of a step with what they are and their uncertainty, at most two, one a line.
std::string headlineText(const Step& step, const StepResult& result);

}  // namespace fettle
