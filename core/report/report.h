#pragma once
#include <string>
#include <variant>
#include <vector>

#include "core/steps/chart.h"
#include "core/steps/finding.h"

namespace fettle {

// What a report says, as a tree without drawing. ui/report makes pages of it.

struct Heading {
  int level = 1;  ///< 1 to 3
  std::string text;
};

struct Paragraph {
  enum class Tone { plain, dim, caution };
  std::string text;
  Tone tone = Tone::plain;
};

struct ReportTable {
  struct Column {
    std::string head;
    bool figures = false;  ///< right-aligned
  };
  struct Row {
    std::vector<std::string> cells;
    bool struck = false;  ///< left out by the user; the reason stands in the last cell
  };
  std::vector<Column> columns;
  std::vector<Row> rows;
};

using ReportBlock = std::variant<Heading, Paragraph, ReportTable, Finding, Chart>;

struct Report {
  std::string title, machine, date, program;
  std::vector<ReportBlock> blocks;
};

}  // namespace fettle
