#pragma once
#include <QDir>
#include <QFile>
#include <QString>
#include <QTest>

namespace fettle::tests {

/// Path of a file of tests/data, which make_data.py there makes.
inline QString dataFile(const QString& name) {
  return QStringLiteral(FETTLE_SOURCE_DIR "/tests/data/") + name;
}

/// Path of a file of data that are no part of the project, in the folder named by the environment variable
/// FETTLE_OUTSIDE_DATA. Empty when it is not there.
inline QString outsideFile(const QString& relative) {
  const QString folder = qEnvironmentVariable("FETTLE_OUTSIDE_DATA");
  const QString path = QDir(folder).filePath(relative);
  return !folder.isEmpty() && QFile::exists(path) ? path : QString();
}

}  // namespace fettle::tests

/// Skips the rest of a test whose outside file is not there.
#define SKIP_WITHOUT_OUTSIDE_FILE(path)                                                                \
  if ((path).isEmpty()) {                                                                              \
    QSKIP("Needs data that are no part of the project; set FETTLE_OUTSIDE_DATA to the folder of it."); \
  }
