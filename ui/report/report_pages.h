#pragma once
#include "core/report/report.h"

class QPagedPaintDevice;

namespace fettle::ui {

/// Draws a report on the pages of a PDF writer or printer: charts as vectors, never cut by a page break,
/// table heads repeated, machine and title on top, page number, date and program below. Needs a
/// QApplication.
/// @return false when the device refused to begin
bool paintPages(QPagedPaintDevice& device, const Report& report);

}  // namespace fettle::ui
