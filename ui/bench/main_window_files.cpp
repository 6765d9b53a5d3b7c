#include <QApplication>
#include <QFileDialog>
#include <QFileInfo>
#include <QMenu>
#include <QMessageBox>
#include <QSaveFile>
#include <QStandardPaths>

#include "core/intake/file_bytes.h"
#include "core/store/import_file.h"
#include "ui/bench/machine_dialog.h"
#include "ui/bench/main_window.h"
#include "ui/bench/recent_files.h"
#include "ui/bench/start_page.h"
#include "ui/bench/step_page.h"
#include "ui/report/write_report.h"

namespace fettle::ui {
namespace {

QString machineFilter() {
  return MainWindow::tr("Machines (*.fettle)");
}

QString documentsFolder() {
  return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
}

QString withEnding(const QString& path) {
  return path.isEmpty() || !QFileInfo(path).suffix().isEmpty() ? path : path + ".fettle";
}

/// Makes the machine file of the demo; answers a sentence when that failed.
QString makeDemo(const QString& path) {
  const QFileInfo text(demoHistory());
  const auto read = [&](const std::string& name) -> tl::expected<std::string, std::string> {
    auto bytes = readFileBytes(text.dir().filePath(QString::fromStdString(name)).toStdString());
    if (!bytes) {
      return tl::unexpected(bytes.error().sentence);
    }
    return std::move(*bytes);
  };
  QDir().mkpath(QFileInfo(path).path());
  const auto made = read(text.fileName().toStdString()).and_then([&](const std::string& json) {
    // Text that is no JSON is refused as any other that is no history.
    return importFile(Json::parse(json, nullptr, false), read, path.toStdString());
  });
  return made ? QString() : QString::fromStdString(made.error());
}

}  // namespace

void MainWindow::newMachine() {
  MachineRecord machine;
  machine.instruments = instruments::bench();
  MachineDialog dialog(machine, m_palette, false, this);
  dialog.setWindowTitle(tr("New machine"));
  while (dialog.exec() == QDialog::Accepted) {  // without a file the sheet is shown again, nothing is lost
    const QString name = QString::fromStdString(dialog.machine().sheet.value("name", "machine"));
    const QString path = withEnding(QFileDialog::getSaveFileName(
        this, tr("New machine"), QDir(documentsFolder()).filePath(name + ".fettle"), machineFilter(),
        nullptr, QFileDialog::DontConfirmOverwrite));
    if (path.isEmpty()) {
      continue;
    }
    History history;
    history.machine = dialog.machine();
    auto file = MachineFile::create(path.toStdString(), history);
    if (file) {
      rememberFile(path);
      takeDocument(std::move(*file));
      startSession();
      return;
    }
    QMessageBox::warning(this, tr("New machine"), QString::fromStdString(file.error()));
  }
}

void MainWindow::askOpen() {
  const QString path = QFileDialog::getOpenFileName(this, tr("Open a machine"), {}, machineFilter());
  if (!path.isEmpty()) {
    openFile(path);
  }
}

void MainWindow::openDemo() {
  const QString path = QDir(documentsFolder()).filePath("demo-wagtail.fettle");
  if (!QFileInfo::exists(path)) {
    QApplication::setOverrideCursor(Qt::WaitCursor);
    const QString problem = makeDemo(path);
    QApplication::restoreOverrideCursor();
    if (!problem.isEmpty()) {
      QMessageBox::warning(this, tr("Demo machine"), problem);
      return;
    }
  }
  if (openFile(path)) {
    say(tr("The demo machine is invented; it is a file of its own to try things on: %1.").arg(path));
  }
}

void MainWindow::rebuildRecent() {
  m_recentMenu->clear();
  for (const QString& path : recentFiles()) {
    m_recentMenu->addAction(path, this, [this, path] { openFile(path); });
  }
  if (m_recentMenu->isEmpty()) {
    m_recentMenu->addAction(tr("none yet"))->setEnabled(false);
  }
}

void MainWindow::saveCopy() {
  const QString path = withEnding(QFileDialog::getSaveFileName(this, tr("Save a copy"), {}, machineFilter(),
                                                               nullptr, QFileDialog::DontConfirmOverwrite));
  if (path.isEmpty()) {
    return;
  }
  if (const auto saved = m_document->file().saveCopy(path.toStdString()); !saved) {
    QMessageBox::warning(this, tr("Save a copy"), QString::fromStdString(saved.error()));
    return;
  }
  say(tr("The copy is in %1.").arg(path));
}

void MainWindow::exportHistory() {
  const QString path =
      QFileDialog::getSaveFileName(this, tr("Export history as text"), {}, tr("History (*.json)"));
  if (path.isEmpty()) {
    return;
  }
  const QFileInfo target(path);
  const auto exported =
      fettle::exportHistory(m_document->history(), (target.completeBaseName() + "-files").toStdString());
  const auto write = [&](const QString& name, const std::string& bytes) {
    QDir().mkpath(QFileInfo(name).path());
    QSaveFile file(name);
    const auto size = static_cast<qint64>(bytes.size());
    const bool done =
        file.open(QIODevice::WriteOnly) && file.write(bytes.data(), size) == size && file.commit();
    if (!done) {
      QMessageBox::warning(this, tr("Export"),
                           tr("%1 cannot be written: %2.").arg(name, file.errorString()));
    }
    return done;
  };
  QStringList lost;  // what can be read is written all the same
  for (const auto& one : exported.files) {
    const auto bytes = m_document->file().blob(one.sha256);
    if (!bytes) {
      lost << QString::fromStdString(bytes.error());
      continue;
    }
    if (!write(target.dir().filePath(QString::fromStdString(one.path)), *bytes)) {
      return;
    }
  }
  if (write(path, exported.json.dump(2) + "\n")) {
    lost.prepend(tr("The history is in %1.").arg(path));
    say(lost.join('\n'));
  }
}

void MainWindow::writeReport() {
  if (!m_document) {
    return;
  }
  m_page->commitPending();
  const QString name = QString::fromStdString(m_document->history().machine.sheet.value("name", "report"));
  const QString path = QFileDialog::getSaveFileName(this, tr("Report"), name + ".pdf",
                                                    tr("PDF (*.pdf);;Web page (*.html);;Table (*.csv)"));
  if (path.isEmpty()) {
    return;
  }
  if (const auto written = writeReportFile(m_document->history(), m_document->session(), path); !written) {
    QMessageBox::warning(this, tr("Report"), written.error());
    return;
  }
  say(tr("The report is in %1.").arg(path));
}

}  // namespace fettle::ui
