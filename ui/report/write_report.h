#pragma once
#include <QString>
#include <tl/expected.hpp>

#include "core/history/history.h"
#include "core/report/report.h"

namespace fettle::ui {

// Files are written whole or not at all; an error is one sentence. All need a QApplication.

tl::expected<void, QString> writePdf(const Report& report, const QString& path);
tl::expected<void, QString> writeHtml(const Report& report, const QString& path);

/// Writes the report of a session to a file whose ending says how: .pdf, .html or .csv.
tl::expected<void, QString> writeReportFile(const History& history, RecordId session, const QString& path);

}  // namespace fettle::ui
