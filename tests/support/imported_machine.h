#pragma once
#include <QDir>
#include <QProcess>
#include <QSettings>
#include <QTemporaryDir>

namespace fettle::tests {

inline const char* const demoHistory = FETTLE_SOURCE_DIR "/demo-sessions/wagtail/wagtail.json";

/// A machine file of its own, made of a history by the headless program; what the desktop program remembers
/// goes to the same folder.
class ImportedMachine {
 public:
  explicit ImportedMachine(const QString& history = demoHistory, const QString& under = QDir::tempPath())
      : m_folder(under + "/machine-XXXXXX") {
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, m_folder.path());
    m_isMade = QProcess::execute(FETTLE_BATCH, {"import", history, file()}) == 0;
  }
  bool isMade() const { return m_isMade; }
  QString file() const { return m_folder.filePath("machine.fettle"); }

 private:
  QTemporaryDir m_folder;
  bool m_isMade = false;
};

}  // namespace fettle::tests
