#include "core/intake/column_match.h"

#include <fmt/ranges.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "core/intake/utf8.h"
#include "core/measure/header_words.h"
#include "core/measure/number_text.h"

namespace fettle {
namespace {

using Heads = std::vector<ColumnHead>;
using Wanted = std::vector<WantedColumn>;

std::string listed(const std::vector<std::string>& words) {
  return fmt::format("{}", fmt::join(words, ", "));
}

std::string headerList(const Heads& heads) {
  std::vector<std::string> shown;
  for (std::size_t c = 0; c < heads.size(); ++c) {
    shown.push_back(std::to_string(c + 1) +
                    (heads[c].header.empty() ? "" : " \"" + shownText(heads[c].header) + "\""));
  }
  return listed(shown);
}

std::string keyList(const Wanted& wanted, bool requiredOnly) {
  std::vector<std::string> keys;
  for (const auto& column : wanted) {
    if (column.required || !requiredOnly) {
      keys.push_back(column.key);
    }
  }
  return listed(keys);
}

/// Columns with this header: letter by letter, else but for case and separators, else but for the unit.
std::vector<std::size_t> columnsWithHeader(const Heads& heads, std::string_view text) {
  auto found = headsWhere(heads, [&](const auto& head) { return trimmed(head.header) == text; });
  const auto words = nameWords(text);
  if (found.empty() && !words.empty()) {
    found = headsWhere(heads, [&](const auto& head) { return nameWords(head.header) == words; });
  }
  if (found.empty() && !words.empty()) {
    found = headsWhere(heads,
                       [&](const auto& head) { return nameWords(splitHeader(head.header).name) == words; });
  }
  return found;
}

/// The column a user names by header or by number from 1.
Intake<std::size_t> chosenColumn(const Heads& heads, const std::string& key, std::string_view text) {
  text = trimmed(text);
  const auto found = columnsWithHeader(heads, text);
  if (found.size() == 1) {
    return found.front();
  }
  if (found.size() > 1) {
    return refusal::ambiguousColumn(key, headerList(heads));
  }
  const bool digits =
      !text.empty() && text.size() < 10 && text.find_first_not_of("0123456789") == text.npos;
  if (!digits) {
    return refusal::noSuchColumn(key, text, headerList(heads));
  }
  const auto number = std::stoul(std::string(text));
  if (number < 1 || number > heads.size()) {
    return refusal::noSuchColumnNumber(key, text, heads.size());
  }
  return number - 1;
}

/// The unit of a column: chosen, else written in the table, else the wanted one.
Intake<std::string> sourceUnit(const ColumnHead& head, const WantedColumn& wanted,
                               const ColumnChoice& choice) {
  const auto dimension = wanted.dimension();
  const auto chosen = choice.units.find(wanted.key);
  const bool clock = head.kind == ColumnKind::clock;
  std::string text = chosen != choice.units.end() ? chosen->second : unitOf(head, dimension);
  if (chosen == choice.units.end() && (clock || (text == trimmed(head.header) && text == "clock"))) {
    text = clock ? "clock" : "";  // a column called "clock" may well count seconds
  }
  if (wanted.words || !dimension || text.empty()) {
    return wanted.unit;
  }
  const auto unit = unitFromText(text, dimension);
  if (!unit) {
    return unitFromText(text) ? refusal::wrongUnit(wanted.key, text, unitWords(*dimension))
                              : refusal::unknownUnit(wanted.key, text, unitWords(*dimension));
  }
  if ((unit->key == "clock") != clock) {
    return refusal::clockUnit(wanted.key, clock);
  }
  return std::string(unit->key);
}

/// Matches while collecting what went wrong, so that asking and suggesting share one way.
class Matching {
 public:
  Matching(const Heads& heads, const Wanted& wanted, const ColumnChoice& choice)
      : m_heads(heads),
        m_wanted(wanted),
        m_choice(choice),
        m_column(wanted.size()),
        m_taken(heads.size()),
        m_doubtful(wanted.size()) {
    checkKeys();
    takeChosen();
    for (const auto level : {MatchLevel::key, MatchLevel::name, MatchLevel::synonym, MatchLevel::words}) {
      takeLike(level);
    }
    takeInOrder();
    finish();
  }

  std::vector<ColumnMatch> matches;
  std::optional<IntakeError> firstError;

 private:
  void blame(const refusal::Error& error) {
    if (!firstError) {
      firstError = error.value();
    }
  }

  void checkKeys() {
    for (const auto* map : {&m_choice.columns, &m_choice.units}) {
      for (const auto& entry : *map) {
        const bool known = std::any_of(m_wanted.begin(), m_wanted.end(),
                                       [&](const auto& column) { return column.key == entry.first; });
        if (!known) {
          blame(refusal::unknownKey(entry.first, keyList(m_wanted, false)));
        }
      }
    }
  }

  void take(std::size_t wanted, std::size_t column) {
    if (m_taken[column]) {
      blame(refusal::columnTwice(column + 1, m_wanted[*m_taken[column]].key, m_wanted[wanted].key));
      return;
    }
    m_taken[column] = wanted;
    m_column[wanted] = column;
  }

  void takeChosen() {
    for (std::size_t w = 0; w < m_wanted.size(); ++w) {
      const auto chosen = m_choice.columns.find(m_wanted[w].key);
      if (chosen == m_choice.columns.end() || trimmed(chosen->second).empty()) {
        continue;
      }
      if (const auto column = chosenColumn(m_heads, chosen->first, chosen->second)) {
        take(w, *column);
      } else {
        blame(tl::unexpected(column.error()));
      }
    }
  }

  void takeLike(MatchLevel level) {
    for (std::size_t w = 0; w < m_wanted.size(); ++w) {
      if (m_column[w] || m_doubtful[w] || m_choice.columns.contains(m_wanted[w].key)) {
        continue;
      }
      auto found = columnsLike(m_wanted[w], m_heads, level);
      std::erase_if(found, [&](std::size_t column) { return m_taken[column].has_value(); });
      if (found.size() == 1) {
        take(w, found.front());
      } else if (found.size() > 1) {
        std::vector<std::string> names;
        names.reserve(found.size());
        for (const auto column : found) {
          names.push_back(std::to_string(column + 1) + " \"" + shownText(m_heads[column].header) + "\"");
        }
        m_doubtful[w] = listed(names);
        if (level != MatchLevel::words) {
          blame(refusal::ambiguousColumn(m_wanted[w].key, *m_doubtful[w]));
        }
      }
    }
  }

  bool isHeadless() const {
    return std::all_of(m_heads.begin(), m_heads.end(),
                       [](const auto& head) { return head.header.empty(); });
  }

  void takeInOrder() {
    if (!m_choice.inOrder || !isHeadless() || !m_choice.columns.empty()) {
      return;
    }
    for (std::size_t w = 0; w < std::min(m_wanted.size(), m_heads.size()); ++w) {
      if (!m_wanted[w].onlyByHeader) {
        take(w, w);
      }
    }
  }

  void blameMissing(const WantedColumn& wanted, std::size_t index) {
    if (m_doubtful[index]) {
      blame(refusal::ambiguousColumn(wanted.key, *m_doubtful[index]));
    } else if (isHeadless()) {
      blame(refusal::noHeader(keyList(m_wanted, true), m_heads.size()));
    } else {
      blame(refusal::noColumn(wanted.key, wanted.label, headerList(m_heads)));
    }
  }

  void finish() {
    for (std::size_t w = 0; w < m_wanted.size(); ++w) {
      const auto& wanted = m_wanted[w];
      if (!m_column[w]) {
        if (wanted.required) {
          blameMissing(wanted, w);
        }
        continue;
      }
      if (auto unit = sourceUnit(m_heads[*m_column[w]], wanted, m_choice)) {
        matches.push_back({wanted.key, *m_column[w], *std::move(unit)});
      } else {
        blame(tl::unexpected(unit.error()));
      }
    }
  }

  const Heads& m_heads;
  const Wanted& m_wanted;
  const ColumnChoice& m_choice;
  std::vector<std::optional<std::size_t>> m_column;    // of each wanted key
  std::vector<std::optional<std::size_t>> m_taken;     // by which wanted key
  std::vector<std::optional<std::string>> m_doubtful;  // the columns a wanted one may be
};

}  // namespace

Intake<std::vector<ColumnMatch>> matchColumns(const Heads& heads, const Wanted& wanted,
                                              const ColumnChoice& choice) {
  Matching matching(heads, wanted, choice);
  if (matching.firstError) {
    return tl::unexpected(*std::move(matching.firstError));
  }
  return std::move(matching.matches);
}

std::vector<ColumnMatch> suggestColumns(const Heads& heads, const Wanted& wanted,
                                        const ColumnChoice& choice) {
  return Matching(heads, wanted, choice).matches;
}

}  // namespace fettle
