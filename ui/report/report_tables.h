#pragma once
#include "core/report/report.h"
#include "ui/report/report_row.h"

namespace fettle::ui {

/// A table as strips of at most `width`, its head repeated on every page. Columns are as wide as their
/// texts while these fit; then texts break between words. A table whose words do not fit side by side is
/// parted into several under each other, each with the first column.
void addTable(std::vector<Strip>& strips, const ReportTable& table, double width, const ReportType& type);

/// Facts, in two columns where they are short.
void addFacts(std::vector<Strip>& strips, const KeyValues& facts, double width, const ReportType& type);

}  // namespace fettle::ui
