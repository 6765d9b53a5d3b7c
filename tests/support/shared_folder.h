#pragma once
#include <QDir>
#include <QFile>
#include <QString>

namespace fettle::tests {

/// Path of a file in the folder of outside data: environment variable FETTLE_SHARED, else the folder
/// `shared` beside the sources. Empty when it is not there.
inline QString sharedFile(const QString& relative) {
  const QString folder =
      qEnvironmentVariable("FETTLE_SHARED", QStringLiteral(FETTLE_SOURCE_DIR "/../shared"));
  const QString path = QDir(folder).filePath(relative);
  return QFile::exists(path) ? path : QString();
}

}  // namespace fettle::tests
