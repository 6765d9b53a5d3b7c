#pragma once
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "core/steps/contract/chart.h"
#include "core/steps/contract/finding.h"

namespace fettle {

// What a report says, as a tree without drawing. ui/report makes pages of it.

struct Heading {
  int level = 1;  ///< 1 to 4
  std::string text;
};

struct Paragraph {
  std::string text;
  bool dim = false;  ///< explains rather than says
};

struct Caution {
  std::string text;
};

/// Short facts, each under its name.
struct KeyValues {
  std::vector<std::pair<std::string, std::string>> pairs;
};

struct ReportTable {
  struct Column {
    std::string head;
    bool figures = false;  ///< right-aligned
  };
  struct Row {
    std::vector<std::string> cells;  ///< as many as columns
    bool struck = false;             ///< left out by the user; the reason stands in the last cell
  };
  std::vector<Column> columns;
  std::vector<Row> rows;
};

/// Takes out the columns that have no word in any row.
void dropEmptyColumns(ReportTable& table);

struct PageBreak {};

using ReportBlock =
    std::variant<Heading, Paragraph, Caution, KeyValues, ReportTable, Finding, Chart, PageBreak>;
using ReportBlocks = std::vector<ReportBlock>;

void append(ReportBlocks& blocks, ReportBlocks more);

struct Report {
  std::string title;
  std::string machine;
  std::string date;     ///< of the session, "2026-11-25"
  std::string program;  ///< with its version
  ReportBlocks blocks;
};

}  // namespace fettle
