#include "ui/bench/recent_files.h"

#include <QFileInfo>
#include <QSettings>

namespace fettle::ui {

QStringList recentFiles() {
  QStringList there;
  for (const QString& path : QSettings().value("files/recent").toStringList()) {
    if (QFileInfo::exists(path)) {
      there << path;
    }
  }
  return there;
}

void rememberFile(const QString& path) {
  constexpr int mostRemembered = 8;
  const QString full = QFileInfo(path).absoluteFilePath();
  QStringList files = recentFiles();
  files.removeAll(full);
  files.prepend(full);
  QSettings().setValue("files/recent", QStringList(files.mid(0, mostRemembered)));
}

}  // namespace fettle::ui
