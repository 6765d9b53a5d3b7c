#include "core/intake/header_match.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

#include "core/measure/header_words.h"
#include "core/measure/number_text.h"

namespace fettle {
namespace {

using Names = std::vector<std::string_view>;

/// Usual headers of the quantities that captures and measured points hold, the likeliest first.
const std::vector<std::pair<std::string_view, Names>>& usualHeaders() {
  static const std::vector<std::pair<std::string_view, Names>> all = {
      {"time", {"t", "zeit", "clock", "clock time", "elapsed", "elapsed time", "uhrzeit", "timestamp"}},
      {"ax", {"x", "a x", "acc x", "acceleration x"}},
      {"ay", {"y", "a y", "acc y", "acceleration y"}},
      {"az", {"z", "a z", "acc z", "acceleration z"}},
      {"temp", {"temperature", "temperatur", "actual", "actual temperature", "measured", "t"}},
      {"duty", {"output", "duty cycle", "power", "heater", "heater output", "heater power"}},
      {"target",
       {"setpoint", "set point", "target temperature", "set temperature", "soll", "solltemperatur"}},
      {"z", {"height", "z height"}},
      {"height", {"z", "z height"}},
  };
  return all;
}

std::string joined(std::string_view text) {
  std::string out;
  for (const auto& word : nameWords(text)) {
    out += out.empty() ? "" : " ";
    out += word;
  }
  return out;
}

std::string bareName(std::string_view header, std::optional<Dimension> dimension) {
  return joined(splitHeader(header, dimension).name);
}

/// Whether the column could hold what is wanted at all.
bool suits(const WantedColumn& wanted, const ColumnHead& head) {
  const auto dimension = wanted.dimension();
  if (wanted.words || head.kind == ColumnKind::words) {
    return wanted.words;
  }
  if (head.kind == ColumnKind::clock) {
    return dimension == Dimension::time;
  }
  const auto unit = unitOf(head, dimension);
  if (!dimension || unit.empty()) {
    // "x mm" has no unit of acceleration, but one of length.
    const auto other = splitHeader(head.header);
    return !dimension || other.unit.empty() || other.name == head.header;
  }
  // An unknown unit is told later; here it says nothing about the dimension.
  return unitFromText(unit, dimension) || !unitFromText(unit);
}

bool isCalled(const WantedColumn& wanted, const ColumnHead& head, std::string_view name) {
  return !name.empty() &&
         (joined(head.header) == name || bareName(head.header, wanted.dimension()) == name);
}

/// Label, synonyms of the caller and usual headers of a key, as normalised names.
std::vector<std::string> otherNames(const WantedColumn& wanted) {
  std::vector<std::string> names;
  for (const auto& synonym : wanted.synonyms) {
    names.push_back(joined(synonym));
  }
  names.push_back(joined(wanted.label));
  names.push_back(bareName(wanted.label, wanted.dimension()));
  const auto key = bareName(wanted.key, wanted.dimension());
  for (const auto& [name, others] : usualHeaders()) {
    if (name == key) {
      names.insert(names.end(), others.begin(), others.end());
    }
  }
  return names;
}

/// Columns that suit and pass a test.
template <class Test>
std::vector<std::size_t> columnsWhere(const WantedColumn& wanted, const std::vector<ColumnHead>& heads,
                                      Test test) {
  return headsWhere(heads, [&](const auto& head) { return test(head) && suits(wanted, head); });
}

}  // namespace

std::optional<Dimension> WantedColumn::dimension() const {
  const auto known = words ? std::nullopt : unitFromText(unit);
  return known ? std::optional(known->dimension) : std::nullopt;
}

std::vector<std::string> nameWords(std::string_view text) {
  std::vector<std::string> words(1);
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 0x80 || std::isalnum(byte) != 0) {
      words.back() += static_cast<char>(byte < 0x80 ? std::tolower(byte) : byte);
    } else if (!words.back().empty()) {
      words.emplace_back();
    }
  }
  if (words.back().empty()) {
    words.pop_back();
  }
  return words;
}

std::string unitOf(const ColumnHead& head, std::optional<Dimension> dimension) {
  const auto row = trimmed(head.unit);
  return row.empty() || row == "-" ? splitHeader(head.header, dimension).unit : std::string(row);
}

std::vector<std::size_t> columnsLike(const WantedColumn& wanted, const std::vector<ColumnHead>& heads,
                                     MatchLevel level) {
  switch (level) {
    case MatchLevel::key:
      return headsWhere(heads, [&](const auto& head) {
        return trimmed(head.header) == wanted.key &&
               (head.kind == ColumnKind::words || suits(wanted, head));
      });
    case MatchLevel::name: {
      const auto whole = joined(wanted.key);
      const auto bare = bareName(wanted.key, wanted.dimension());
      return columnsWhere(wanted, heads, [&](const auto& head) {
        return isCalled(wanted, head, whole) || isCalled(wanted, head, bare);
      });
    }
    case MatchLevel::synonym:
      for (const auto& name : otherNames(wanted)) {
        auto found =
            columnsWhere(wanted, heads, [&](const auto& head) { return isCalled(wanted, head, name); });
        if (!found.empty()) {
          return found;
        }
      }
      // "seconds", "ms", "µs": only time is named by its unit alone.
      return columnsWhere(wanted, heads, [&](const auto& head) {
        return wanted.dimension() == Dimension::time && unitFromText(head.header, Dimension::time);
      });
    case MatchLevel::words: {
      const auto needed = nameWords(splitHeader(wanted.key, wanted.dimension()).name);
      return columnsWhere(wanted, heads, [&](const auto& head) {
        const auto words = nameWords(head.header);
        return !needed.empty() && std::all_of(needed.begin(), needed.end(), [&](const auto& word) {
          return std::find(words.begin(), words.end(), word) != words.end();
        });
      });
    }
  }
  return {};
}

}  // namespace fettle
