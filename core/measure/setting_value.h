#pragma once
#include <map>
#include <optional>
#include <string>

namespace fettle {

/// A setting of the machine: a number in a fixed unit, or a word.
struct SettingValue {
  std::optional<double> number;
  std::string text;
  bool blank() const { return !number && text.empty(); }
  friend bool operator==(const SettingValue&, const SettingValue&) = default;
};

using SettingValues = std::map<std::string, SettingValue>;

}  // namespace fettle
