#pragma once
#include <QString>

#include "core/report/report.h"

namespace fettle::ui {

/// One block as simple HTML, without charts (they give nothing).
QString htmlOf(const ReportBlock& block);

/// The whole report as one self-contained page with charts as inline SVG; needs no script. Needs a
/// QApplication.
QString htmlPage(const Report& report);

}  // namespace fettle::ui
