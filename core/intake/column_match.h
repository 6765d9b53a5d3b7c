#pragma once
#include <map>
#include <string>
#include <vector>

#include "core/intake/header_match.h"
#include "core/intake/intake_error.h"

namespace fettle {

/// What the user says about the columns; whatever is left out is taken from the headers.
struct ColumnChoice {
  std::map<std::string, std::string>
      columns;  ///< key → header text, number from 1, or nothing to leave it out
  std::map<std::string, std::string> units;  ///< key → unit word
  bool inOrder = false;  ///< a table without headers holds the wanted columns in their order
  bool operator==(const ColumnChoice&) const = default;
};

/// Where a wanted column comes from.
struct ColumnMatch {
  std::string key;
  std::size_t column = 0;  ///< from 0
  std::string unit;        ///< key of the unit the table is in
  bool operator==(const ColumnMatch&) const = default;
};

/// Finds each wanted column: as the user says, else by its header (see columnsLike). Units: as the user
/// says, else from the units row or the header, else the wanted unit. Refuses unknown keys, columns that
/// are not there, a doubtful choice, units that are unknown or of another dimension, and required columns
/// that are not found.
Intake<std::vector<ColumnMatch>> matchColumns(const std::vector<ColumnHead>& heads,
                                              const std::vector<WantedColumn>& wanted,
                                              const ColumnChoice& choice = {});

/// As matchColumns, for a dialog: whatever cannot be matched is left out instead of refused.
std::vector<ColumnMatch> suggestColumns(const std::vector<ColumnHead>& heads,
                                        const std::vector<WantedColumn>& wanted,
                                        const ColumnChoice& choice = {});

}  // namespace fettle
