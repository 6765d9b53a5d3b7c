#pragma once
#include <QStringList>

namespace fettle::ui {

/// The machine files opened last, the latest first; files that are gone are left out.
QStringList recentFiles();
void rememberFile(const QString& path);

}  // namespace fettle::ui
