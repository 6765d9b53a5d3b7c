#include <QAction>
#include <QActionGroup>
#include <QApplication>
#include <QInputDialog>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QUndoStack>

#include "core/history/part_groups.h"
#include "core/history/version.h"
#include "core/steps/catalogue.h"
#include "ui/bench/day.h"
#include "ui/bench/header_bar.h"
#include "ui/bench/machine_dialog.h"
#include "ui/bench/main_window.h"
#include "ui/bench/recent_files.h"
#include "ui/bench/session_dialog.h"
#include "ui/bench/settings_page.h"
#include "ui/bench/step_list.h"
#include "ui/bench/step_page.h"
#include "ui/theme/look.h"

namespace fettle::ui {
void MainWindow::buildMenus() {
  buildFileMenu();
  auto* edit = menuBar()->addMenu(tr("&Edit"));
  auto* undo = edit->addAction(tr("&Undo"));
  undo->setShortcut(QKeySequence::Undo);
  auto* redo = edit->addAction(tr("&Redo"));
  redo->setShortcuts({QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), QKeySequence(Qt::CTRL | Qt::Key_Y)});
  m_machineActions.insert(m_machineActions.end(), {undo, redo});
  connect(undo, &QAction::triggered, this, &MainWindow::undo);
  connect(redo, &QAction::triggered, this, &MainWindow::redo);
  connect(edit, &QMenu::aboutToShow, this, [this, undo, redo] {
    const QUndoStack* stack = m_document ? &m_document->undoStack() : nullptr;
    undo->setText(stack && stack->canUndo() ? tr("&Undo %1").arg(stack->undoText()) : tr("&Undo"));
    redo->setText(stack && stack->canRedo() ? tr("&Redo %1").arg(stack->redoText()) : tr("&Redo"));
  });
  buildSessionMenu();
  buildStepMenu();
  buildViewMenu();
  auto* help = menuBar()->addMenu(tr("&Help"));
  help->addAction(tr("&What to do in this step"), QKeySequence(Qt::Key_F1), this, &MainWindow::showHelp);
  help->addAction(tr("&About Fettle"), this, [this] {
    QMessageBox::about(
        this, tr("About Fettle"),
        tr("<b>Fettle %1</b><p>A commissioning bench for filament printers. To fettle is to put a "
           "machine in order.</p><p>Free software under the GNU General Public License, version 3 or "
           "later. It comes without warranty. Work on the mains belongs to a qualified person, and "
           "local codes come before anything this program says.</p>")
            .arg(QString::fromStdString(programVersion())));
  });
}

void MainWindow::undo() {
  m_page->commitPending();
  if (const auto change = m_document->undo()) {
    showPlaceOf(*change, false);
  }
}

void MainWindow::redo() {
  if (const auto change = m_document->redo()) {
    showPlaceOf(*change, true);
  }
}

void MainWindow::showPlaceOf(const Change& change, bool redone) {
  const Record& record = change.after ? *change.after : *change.before;
  const auto* run = std::get_if<StepRun>(&record);
  const auto* mark = std::get_if<StepMark>(&record);
  const std::string key = run ? run->step : mark ? mark->step : std::string();
  const QString what = QString::fromStdString(change.what);
  const Step* step = findStep(key);
  if (!step) {
    say(redone ? tr("Done again: %1.").arg(what) : tr("Undone: %1.").arg(what));
    return;
  }
  const RecordId session = run ? run->session : mark->session;
  const bool inSight = m_page->step() == step && m_document->session() == session;
  m_document->showSession(session);
  chooseStep(key);
  if (run && change.after) {
    m_page->chooseRun(run->id);
  }
  if (!inSight) {
    const QString name = QString::fromStdString(step->name);
    say(redone ? tr("Done again in %1: %2.").arg(name, what) : tr("Undone in %1: %2.").arg(name, what));
  }
}

void MainWindow::buildFileMenu() {
  auto* menu = menuBar()->addMenu(tr("&File"));
  menu->addAction(tr("&New machine…"), QKeySequence::New, this, &MainWindow::newMachine);
  menu->addAction(tr("&Open…"), QKeySequence::Open, this, &MainWindow::askOpen);
  m_recentMenu = menu->addMenu(tr("Open recen&t"));
  connect(m_recentMenu, &QMenu::aboutToShow, this, &MainWindow::rebuildRecent);
  menu->addSeparator();
  m_machineActions.push_back(menu->addAction(tr("Save a &copy…"), this, &MainWindow::saveCopy));
  m_machineActions.push_back(
      menu->addAction(tr("&Export history as text…"), this, &MainWindow::exportHistory));
  m_machineActions.push_back(
      menu->addAction(tr("&Report…"), QKeySequence(Qt::CTRL | Qt::Key_P), this, &MainWindow::writeReport));
  m_machineActions.push_back(menu->addAction(
      tr("To enter at the &machine"), QKeySequence(Qt::CTRL | Qt::Key_M), this, &MainWindow::showSettings));
  menu->addSeparator();
  menu->addAction(tr("&Quit"), QKeySequence::Quit, this, &QWidget::close);
}

void MainWindow::buildSessionMenu() {
  auto* menu = menuBar()->addMenu(tr("&Machine"));
  m_machineActions.push_back(menu->addAction(tr("Sheet, settings found, &instruments, tolerances…"), this,
                                             &MainWindow::editMachine));
  m_machineActions.push_back(menu->addAction(tr("A &part was changed…"), this, &MainWindow::addPartChange));
  menu->addSeparator();
  m_machineActions.push_back(menu->addAction(tr("&New session…"), this, &MainWindow::startSession));
  m_machineActions.push_back(menu->addAction(tr("&Edit session…"), this, &MainWindow::editSession));
  m_sessionsMenu = menu->addMenu(tr("&Show session"));
  connect(m_sessionsMenu, &QMenu::aboutToShow, this, &MainWindow::rebuildSessions);
}

void MainWindow::buildStepMenu() {
  auto* menu = menuBar()->addMenu(tr("&Step"));
  menu->addAction(tr("&Next step"), QKeySequence(Qt::CTRL | Qt::Key_PageDown), this,
                  [this] { m_list->walk(1); });
  menu->addAction(tr("&Previous step"), QKeySequence(Qt::CTRL | Qt::Key_PageUp), this,
                  [this] { m_list->walk(-1); });
  menu->addSeparator();
  m_machineActions.push_back(menu->addAction(tr("&Enter readings"), QKeySequence(Qt::CTRL | Qt::Key_E),
                                             m_page, &StepPage::enterReadings));
  m_machineActions.push_back(
      menu->addAction(tr("New &run"), QKeySequence(Qt::CTRL | Qt::Key_R), m_page, &StepPage::startRun));
  m_machineActions.push_back(menu->addAction(tr("&Accept, or take back"),
                                             QKeySequence(Qt::CTRL | Qt::Key_Return), m_page,
                                             &StepPage::toggleAcceptance));
  menu->addSeparator();
  m_machineActions.push_back(menu->addAction(tr("Pre&vious run"), QKeySequence(Qt::ALT | Qt::Key_PageUp),
                                             this, [this] { m_page->walkRuns(-1); }));
  m_machineActions.push_back(menu->addAction(tr("Ne&xt run"), QKeySequence(Qt::ALT | Qt::Key_PageDown),
                                             this, [this] { m_page->walkRuns(1); }));
  auto* decide = menu->addAction(tr("&Override…"), m_page, &StepPage::decide);
  decide->setEnabled(false);
  connect(menu, &QMenu::aboutToShow, this, [this, decide] {
    const QString words = m_page->decision();
    decide->setText("&" + (words.isEmpty() ? tr("Override…") : words));
    decide->setEnabled(!words.isEmpty());
  });
}

void MainWindow::buildViewMenu() {
  auto* menu = menuBar()->addMenu(tr("&View"));
  auto* large = menu->addAction(tr("&Large"));
  large->setCheckable(true);
  connect(large, &QAction::toggled, this, [](bool on) { setTypeSize(*qApp, on ? 13 : 10); });
}

void MainWindow::startSession() {
  if (!m_document) {
    return;
  }
  Session session;
  if (!m_document->history().sessions.empty()) {
    session = m_document->history().sessions.back();
    session.reason.clear();
    session.benchSeconds = 0;
  }
  session.date = now();
  SessionDialog dialog(session, tr("New session"), this);
  if (dialog.exec() == QDialog::Accepted) {
    m_document->startSession(dialog.session());
  }
}

void MainWindow::editSession() {
  if (!m_document) {
    return;
  }
  const Session* session = m_document->history().session(m_document->session());
  if (!session) {
    startSession();
    return;
  }
  if (!m_document->editable()) {
    say(m_document->whyNotEditable());
    return;
  }
  SessionDialog dialog(*session, tr("Session"), this);
  if (dialog.exec() == QDialog::Accepted) {
    m_document->editSession(dialog.session(), tr("session"));
  }
}

void MainWindow::rebuildSessions() {
  m_sessionsMenu->clear();
  if (!m_document) {
    return;
  }
  int number = 0;
  for (const auto& session : m_document->history().sessions) {
    const QString text =
        tr("%1: %2 %3").arg(++number).arg(dayInWords(session.date), QString::fromStdString(session.reason));
    auto* action = m_sessionsMenu->addAction(text, this, [this, id = session.id] {
      m_page->commitPending();
      m_document->showSession(id);
    });
    action->setCheckable(true);
    action->setChecked(session.id == m_document->session());
  }
}

void MainWindow::addPartChange() {
  QStringList labels;
  std::vector<std::string> keys;
  for (const auto& group : partGroups()) {
    if (!group.key.ends_with("_adopted")) {
      labels << QString::fromStdString(group.label);
      keys.push_back(group.key);
    }
  }
  bool agreed = false;
  const QString label = QInputDialog::getItem(this, tr("A part was changed"), tr("What was changed?"),
                                              labels, 0, false, &agreed);
  if (!agreed) {
    return;
  }
  const QString note = QInputDialog::getText(
      this, tr("A part was changed"), tr("What exactly, in a few words?"), QLineEdit::Normal, {}, &agreed);
  if (agreed) {
    m_document->addPartChange(keys[static_cast<std::size_t>(labels.indexOf(label))],
                              note.trimmed().toStdString());
  }
}

void MainWindow::editMachine() {
  if (!m_document) {
    newMachine();
    return;
  }
  const bool readOnly = m_document->file().readOnly() != ReadOnlyReason::none;
  MachineDialog dialog(m_document->history().machine, m_palette, readOnly, this);
  if (dialog.exec() == QDialog::Accepted && !readOnly) {
    m_document->setMachine(dialog.machine(), tr("machine"));
  }
}

void MainWindow::showSettings() {
  SettingsPage page(*m_document, this);
  page.exec();
}

}  // namespace fettle::ui
