#pragma once
#include <QString>

#include "core/report/report.h"

namespace fettle::ui {

/// The whole report as one self-contained page with charts as inline SVG; needs no script and nothing from
/// elsewhere. Needs a QApplication.
QString htmlPage(const Report& report);

}  // namespace fettle::ui
