#pragma once
#include "core/report/report.h"
#include "ui/report/report_row.h"

namespace fettle::ui {

/// A report as strips of a page's width. They refer to the charts of the report, which must outlive them.
std::vector<Strip> stripsOf(const Report& report, double width, const ReportType& type);

}  // namespace fettle::ui
