#pragma once
#include "core/report/report.h"

class QPagedPaintDevice;

namespace fettle::ui {

/// Draws a report on the pages of a PDF writer or a printer, whose margins it sets: charts as vectors,
/// never cut by a page break, table heads repeated, no heading alone at the foot of a page; machine and
/// title on top, date, program and page number below. Needs a QApplication.
/// @return false when the device refused to begin
bool paintPages(QPagedPaintDevice& device, const Report& report);

}  // namespace fettle::ui
