#pragma once
#include <QString>
#include <tl/expected.hpp>

#include "core/history/history.h"

namespace fettle::ui {

/// Writes the report of a session to a file whose ending says how: .pdf, .html or .csv. Whole or not at
/// all. The error is one sentence. Needs a QApplication.
tl::expected<void, QString> writeReportFile(const History& history, RecordId session, const QString& path);

}  // namespace fettle::ui
