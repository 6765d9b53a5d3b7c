#include "ui/forms/dropped_files.h"

#include <QMimeData>
#include <QUrl>

namespace fettle::ui {

QStringList filesIn(const QMimeData* data) {
  QStringList files;
  for (const QUrl& url : data->urls()) {
    if (url.isLocalFile()) {
      files << url.toLocalFile();
    }
  }
  return files;
}

}  // namespace fettle::ui
