#include "core/measure/unit.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

#include "core/measure/number_text.h"

namespace fettle {
namespace {

using enum Dimension;

// The first unit of each dimension is the one the program computes in.
constexpr std::array kUnits = {
    Unit{"1", ratio},
    Unit{"%", ratio, 1, 100},
    Unit{"s", time},
    Unit{"ms", time, 1, 1e3},
    Unit{"us", time, 1, 1e6},
    Unit{"clock", time},
    Unit{"min", time, 60},
    Unit{"h", time, 3600},
    Unit{"mm", length},
    Unit{"um", length, 1, 1e3},
    Unit{"cm", length, 10},
    Unit{"m", length, 1e3},
    Unit{"mm2", area},
    Unit{"mm3", volume},
    Unit{"cm3", volume, 1e3},
    Unit{"mm/s", speed},
    Unit{"mm/min", speed, 1, 60},
    Unit{"m/s", speed, 1e3},
    Unit{"mm/s2", acceleration},
    Unit{"m/s2", acceleration, 1e3},
    Unit{"gn", acceleration, 9806.65},
    Unit{"mgn", acceleration, 980665, 1e5},
    Unit{"Hz", frequency},
    Unit{"kHz", frequency, 1e3},
    Unit{"C", temperature},
    Unit{"K", temperature, 1, 1, -273.15},
    Unit{"g", mass},
    Unit{"mg", mass, 1, 1e3},
    Unit{"kg", mass, 1e3},
    Unit{"g/m", linearDensity},
    Unit{"kg/m", linearDensity, 1e3},
    Unit{"g/cm3", density},
    Unit{"kg/m3", density, 1, 1e3},
    Unit{"A", current},
    Unit{"mA", current, 1, 1e3},
    Unit{"V", voltage},
    Unit{"mV", voltage, 1, 1e3},
    Unit{"ohm", resistance},
    Unit{"mohm", resistance, 1, 1e3},
    Unit{"kohm", resistance, 1e3},
    Unit{"W", power},
    Unit{"N", force},
    Unit{"mm3/s", volumeFlow},
    Unit{"deg", angle},
    Unit{"mm/100mm", slope},
    Unit{"mm/m", slope, 1, 10},
    Unit{"1/mm", stepsPerLength},
    Unit{"C/min", temperatureRate},
    Unit{"C/s", temperatureRate, 60},
    Unit{"J/(g K)", specificHeat},
    Unit{"mm3/mm", volumePerLength},
    Unit{"mm/K", lengthPerTemperature},
    Unit{"1/C", gainPerTemperature},
    Unit{"1/(C s)", integralGain},
    Unit{"s/C", derivativeGain},
};

// Spelling, after plain() below, and the key it stands for.
constexpr std::array<std::pair<std::string_view, std::string_view>, 51> kSpellings = {{
    {"sec", "s"},           {"secs", "s"},         {"second", "s"},       {"seconds", "s"},
    {"sekunden", "s"},      {"msec", "ms"},        {"millis", "ms"},      {"millisecond", "ms"},
    {"milliseconds", "ms"}, {"usec", "us"},        {"micros", "us"},      {"microsecond", "us"},
    {"microseconds", "us"}, {"minute", "min"},     {"minutes", "min"},    {"hour", "h"},
    {"hours", "h"},         {"hh:mm:ss", "clock"}, {"h:m:s", "clock"},    {"millimetre", "mm"},
    {"millimeter", "mm"},   {"mms-2", "mm/s2"},    {"mm/s/s", "mm/s2"},   {"ms-2", "m/s2"},
    {"m/s/s", "m/s2"},      {"g0", "gn"},          {"mg0", "mgn"},        {"hz", "Hz"},
    {"degC", "C"},          {"degc", "C"},         {"celsius", "C"},      {"kelvin", "K"},
    {"gram", "g"},          {"grams", "g"},        {"gramm", "g"},        {"ohms", "ohm"},
    {"Ohm", "ohm"},         {"watt", "W"},         {"newton", "N"},       {"volt", "V"},
    {"ampere", "A"},        {"percent", "%"},      {"pct", "%"},          {"fraction", "1"},
    {"ratio", "1"},         {"0..1", "1"},         {"degree", "deg"},     {"degrees", "deg"},
    {"steps/mm", "1/mm"},   {"J/(gK)", "J/(g K)"}, {"1/(Cs)", "1/(C s)"},
}};

constexpr std::array<std::pair<std::string_view, std::string_view>, 17> kSigns = {{
    {"\u00b5", "u"},
    {"\u03bc", "u"},
    {"\u00b2", "2"},
    {"\u00b3", "3"},
    {"\u03a9", "ohm"},
    {"\u2126", "ohm"},
    {"\u207b", "-"},
    {"\u2212", "-"},
    {"\u2082", ""},
    {"\u2099", "n"},
    {"\u00b7", ""},
    {"\u22c5", ""},
    {"\u00a0", ""},
    {"\u2009", ""},
    {"\u202f", ""},
    {"\u2103", "C"},
    {"^", ""},
}};

/// A unit word in ASCII, without brackets, blanks and typography. A degree sign before a letter is dropped.
std::string plain(std::string_view text) {
  text = trimmed(text);
  if (text.size() >= 2 && ((text.front() == '[' && text.back() == ']') ||
                           (text.front() == '(' && text.back() == ')' && text.find('(', 1) == text.npos))) {
    text = trimmed(text.substr(1, text.size() - 2));
  }
  constexpr std::string_view degreeSign = "\u00b0";
  std::string out;
  while (!text.empty()) {
    const auto* sign = std::find_if(kSigns.begin(), kSigns.end(),
                                    [&](const auto& pair) { return text.starts_with(pair.first); });
    if (sign != kSigns.end()) {
      out += sign->second;
      text.remove_prefix(sign->first.size());
    } else if (text.starts_with(degreeSign)) {
      text.remove_prefix(degreeSign.size());
      if (text.empty() || std::isalpha(static_cast<unsigned char>(text.front())) == 0) {
        out += "deg";
      }
    } else {
      if (text.front() != ' ') {
        out += text.front();
      }
      text.remove_prefix(1);
    }
  }
  return out;
}

std::string lowerCase(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return out;
}

std::optional<Unit> unitByPlainWord(std::string_view word, std::optional<Dimension> column) {
  const auto found = std::find_if(kUnits.begin(), kUnits.end(), [&](const Unit& unit) {
    return unit.key == word && (!column || unit.dimension == *column);
  });
  if (found != kUnits.end()) {
    return *found;
  }
  const auto spelling = std::find_if(kSpellings.begin(), kSpellings.end(),
                                     [&](const auto& pair) { return pair.first == word; });
  return spelling == kSpellings.end() ? std::nullopt : unitByPlainWord(spelling->second, column);
}

}  // namespace

std::vector<Unit> unitsOf(Dimension dimension) {
  std::vector<Unit> out;
  std::copy_if(kUnits.begin(), kUnits.end(), std::back_inserter(out),
               [&](const Unit& unit) { return unit.dimension == dimension; });
  return out;
}

std::string unitWords(Dimension dimension) {
  std::string out;
  for (const auto& unit : unitsOf(dimension)) {
    out += out.empty() ? "" : ", ";
    out += unit.key;
  }
  return out;
}

std::optional<Unit> unitFromText(std::string_view text, std::optional<Dimension> column) {
  const std::string word = plain(text);
  if (word.empty() || word.size() > 20) {
    return std::nullopt;
  }
  if (column == acceleration && (word == "g" || word == "mg" || word == "G")) {
    return unitByPlainWord(word == "mg" ? "mgn" : "gn", column);
  }
  if (auto unit = unitByPlainWord(word, column)) {
    return unit;
  }
  if (!column) {
    return unitByPlainWord(lowerCase(word).size() > 2 ? lowerCase(word) : word, column);
  }
  // Where the dimension is known, the case of letters says nothing more.
  for (const auto& unit : unitsOf(*column)) {
    if (lowerCase(unit.key) == lowerCase(word)) {
      return unit;
    }
  }
  return unitByPlainWord(lowerCase(word), column);
}

double convert(double value, const Unit& from, const Unit& to) {
  if (from.key == to.key) {
    return value;
  }
  const double base = value * from.multiply / from.divide + from.offset;
  return (base - to.offset) * to.divide / to.multiply;
}

tl::expected<double, std::string> convert(double value, std::string_view from, std::string_view to) {
  auto target = unitFromText(to);
  auto source = unitFromText(from, target ? std::optional(target->dimension) : std::nullopt);
  if (!source && (source = unitFromText(from))) {
    target = unitFromText(to, source->dimension);
  }
  if (!source || (!target && !unitFromText(to))) {
    return tl::unexpected(fmt::format("The unit \"{}\" is not known.", source ? to : from));
  }
  if (!target) {
    return tl::unexpected(fmt::format("{} cannot be turned into {}; possible are {}.", displayUnit(from),
                                      displayUnit(to), unitWords(source->dimension)));
  }
  return convert(value, *source, *target);
}

std::string withUnit(const std::string& value, std::string_view unit) {
  const std::string shown = displayUnit(unit);
  return shown.empty() || value.empty() ? value : value + " " + shown;
}

std::string displayUnit(std::string_view key) {
  if (key == "1") {
    return "";
  }
  if (key == "1/mm") {
    return "steps/mm";  // the only thing counted per length
  }
  std::string out;
  std::string letters;
  const auto flush = [&] {
    out += letters == "ohm"    ? "\u03a9"
           : letters == "kohm" ? "k\u03a9"
           : letters == "mohm" ? "m\u03a9"
           : letters == "C"    ? "\u00b0C"
           : letters == "deg"  ? "\u00b0"
           : letters == "us"   ? "\u00b5s"
           : letters == "um"   ? "\u00b5m"
           : letters == "gn"   ? "g\u2099"
           : letters == "mgn"  ? "mg\u2099"
                               : letters;
    letters.clear();
  };
  for (std::size_t i = 0; i < key.size(); ++i) {
    const char c = key[i];
    const bool afterLetter =
        i > 0 && (std::isalpha(static_cast<unsigned char>(key[i - 1])) != 0 || key[i - 1] == ')');
    if (std::isalpha(static_cast<unsigned char>(c)) != 0) {
      out += i > 0 && std::isdigit(static_cast<unsigned char>(key[i - 1])) != 0 ? "\u00a0" : "";
      letters += c;
      continue;
    }
    flush();
    out += afterLetter && c == '2'   ? "\u00b2"
           : afterLetter && c == '3' ? "\u00b3"
           : c == ' '                ? "\u00b7"
                                     : std::string(1, c);
  }
  flush();
  return out;
}

}  // namespace fettle
