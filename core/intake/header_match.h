#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/intake/text_format.h"
#include "core/measure/unit.h"

namespace fettle {

/// A column somebody wants to have.
struct WantedColumn {
  std::string key;    ///< as the step describes it: "time_s", "ax", "mass_g"
  std::string label;  ///< for people; also recognised as a header
  std::string unit;   ///< key of the unit the values are wanted in: "s", "mm/s2", "1"
  bool required = true;
  bool words = false;                 ///< words instead of numbers
  std::vector<std::string> synonyms;  ///< other headers for it, the likeliest first
  bool onlyByHeader = false;          ///< never taken by its place in a table without headers

  /// The dimension of the unit; none for words and for units that convert into nothing.
  std::optional<Dimension> dimension() const;
};

/// What the table says about a column.
struct ColumnHead {
  std::string header;
  std::string unit;  ///< of the units row
  ColumnKind kind = ColumnKind::number;
};

/// The words of a name in lower case: letters and digits, whatever parts them.
std::vector<std::string> nameWords(std::string_view text);

/// How a header was recognised, the surest first.
enum class MatchLevel { key, name, synonym, words };

/// Finds the columns that may be `wanted` at one level. Key: the header is the key, letter by letter. Name:
/// it is the key but for unit endings, case and separators ("AX [mg]" for "ax", "Time" for "time_s").
/// Synonym: the same for the label, `synonyms` and the trade's usual headers ("Zeit", "x" for "ax"), only
/// the first of them that is found. Words: the words of the key are among its words ("commanded volume mm3"
/// for "volume_mm3"). A column in a unit of another dimension, or of words where numbers are
/// wanted, is never recognised by itself, but for words under the very key: those are told, not passed
/// over.
std::vector<std::size_t> columnsLike(const WantedColumn& wanted, const std::vector<ColumnHead>& heads,
                                     MatchLevel level);

/// The columns whose head passes a test, in order.
template <class Test>
std::vector<std::size_t> headsWhere(const std::vector<ColumnHead>& heads, Test test) {
  std::vector<std::size_t> found;
  for (std::size_t c = 0; c < heads.size(); ++c) {
    if (test(heads[c])) {
      found.push_back(c);
    }
  }
  return found;
}

/// The unit named in the header or the units row, as written; empty when there is none.
std::string unitOf(const ColumnHead& head, std::optional<Dimension> dimension);

}  // namespace fettle
