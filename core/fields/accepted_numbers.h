#pragma once
#include <optional>
#include <string>

namespace fettle {

/// The numbers that may stand in a field or a setting, and the sentences that refuse others.
struct AcceptedNumbers {
  std::optional<double> minimum, maximum;
  bool whole = false;
  std::string unit;  ///< unit key; may be empty

  bool has(double number) const;
  /// "a number from 0.1 to 100 in mm", "a whole number of 1 or more", "a number".
  std::string words() const;
  /// "\"eighty\" is not a number; a number in mm is needed."
  std::string notANumber(const std::string& given) const;
  /// "900 is not possible; a number from −500 to 500 in mm is needed."
  std::string notPossible(const std::string& given) const;
};

/// A word found where a setting is a number.
std::string wordForNumber(const std::string& setting, const std::string& word,
                          const std::string& unit = {});

}  // namespace fettle
