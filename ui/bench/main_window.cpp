#include "ui/bench/main_window.h"

#include <QAbstractButton>
#include <QApplication>
#include <QCloseEvent>
#include <QKeyEvent>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QSettings>
#include <QSplitter>
#include <QTabBar>
#include <QTimer>
#include <QUndoStack>
#include <QVBoxLayout>

#include "core/steps/catalogue.h"
#include "ui/bench/chart_side.h"
#include "ui/bench/header_bar.h"
#include "ui/bench/help_view.h"
#include "ui/bench/intake_flow.h"
#include "ui/bench/recent_files.h"
#include "ui/bench/start_page.h"
#include "ui/bench/step_list.h"
#include "ui/bench/step_page.h"
#include "ui/charts/chart_pane.h"
#include "ui/charts/chart_view.h"
#include "ui/editing/capture_check.h"
#include "ui/forms/keys.h"

namespace fettle::ui {
namespace {

constexpr int listWidth = 284;
constexpr int pageWidth = 446;
constexpr int pageWidthMost = 560;
constexpr int narrowBelow = 1180;

}  // namespace

MainWindow::MainWindow(const Palette& palette, QWidget* parent) : QMainWindow(parent), m_palette(palette) {
  setObjectName("mainWindow");
  setWindowTitle(tr("Fettle"));
  resize(1280, 800);
  buildBench();
  buildMenus();
  m_list->choose(catalogue().front().key);
  refresh();
  auto* minute = new QTimer(this);
  connect(minute, &QTimer::timeout, this, [this] {
    if (m_document && isActiveWindow()) {
      m_document->addBenchTime(static_cast<double>(m_benchClock.restart()) / 1000);
      m_header->show(*m_document);
    }
  });
  m_benchClock.start();
  minute->start(60000);
}

MainWindow::~MainWindow() = default;

void MainWindow::buildBench() {
  auto* body = new QWidget;
  auto* column = new QVBoxLayout(body);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  m_header = new HeaderBar(m_palette);
  column->addWidget(m_header);
  m_message = new QLabel;
  m_message->setObjectName("messageLabel");
  m_message->setWordWrap(true);
  m_message->setStyleSheet(QStringLiteral("QLabel { background: %1; color: %2; padding: 6px 18px; }")
                               .arg(m_palette.cautionGround.name(), m_palette.caution.name()));
  m_message->hide();
  column->addWidget(m_message);
  m_narrowTabs = new QTabBar;
  m_narrowTabs->setObjectName("narrowTabs");
  m_narrowTabs->addTab(tr("Entry"));
  m_narrowTabs->addTab(tr("Charts"));
  m_narrowTabs->setDrawBase(false);
  m_narrowTabs->hide();
  column->addWidget(m_narrowTabs);

  m_model = new StepListModel(nullptr, this);
  m_list = new StepList(m_model, m_palette);
  m_page = new StepPage(m_palette);
  m_side = new ChartSide(m_palette);
  m_splitter = new QSplitter;
  m_splitter->setObjectName("benchSplitter");
  m_splitter->setHandleWidth(1);
  m_splitter->setChildrenCollapsible(false);
  m_splitter->addWidget(m_list);
  m_splitter->addWidget(m_page);
  m_splitter->addWidget(m_side);
  m_splitter->setStretchFactor(2, 1);
  column->addWidget(m_splitter, 1);
  m_start = new StartPage;
  column->addWidget(m_start, 1);
  setCentralWidget(body);

  connect(m_list, &StepList::stepChosen, this,
          [this](const QString& step) { chooseStep(step.toStdString()); });
  connect(m_page, &StepPage::runShown, this, &MainWindow::refreshCharts);
  connect(m_page, &StepPage::helpWanted, this, &MainWindow::showHelp);
  connect(m_page, &StepPage::fileChosen, this, &MainWindow::takeDroppedFile);
  connect(m_page, &StepPage::tableFileChosen, this, &MainWindow::takeDroppedFile);
  connect(m_side, &ChartSide::stepWanted, this,
          [this](const QString& step) { m_list->choose(step.toStdString()); });
  connect(m_header, &HeaderBar::machineWanted, this, &MainWindow::editMachine);
  connect(m_header, &HeaderBar::sessionWanted, this, &MainWindow::editSession);
  connect(m_header, &HeaderBar::reportWanted, this, &MainWindow::writeReport);
  connect(m_narrowTabs, &QTabBar::currentChanged, this, &MainWindow::fitWidth);
  connect(m_start, &StartPage::newWanted, this, &MainWindow::newMachine);
  connect(m_start, &StartPage::openWanted, this, &MainWindow::askOpen);
  connect(m_start, &StartPage::demoWanted, this, &MainWindow::openDemo);
  connect(m_start, &StartPage::fileWanted, this, &MainWindow::openFile);
}

void MainWindow::resizeEvent(QResizeEvent* event) {
  QMainWindow::resizeEvent(event);
  fitWidth();
}

void MainWindow::fitWidth() {
  m_start->setVisible(!m_document);
  m_header->setVisible(m_document != nullptr);
  m_splitter->setVisible(m_document != nullptr);
  const bool narrow = m_document && width() < narrowBelow;
  const bool wasNarrow = m_narrowTabs->isVisibleTo(this);
  m_narrowTabs->setVisible(narrow);
  m_page->setVisible(!narrow || m_narrowTabs->currentIndex() == 0);
  m_side->setVisible(!narrow || m_narrowTabs->currentIndex() == 1);
  const bool remembered = QSettings().contains("bench/splitter");
  if (!narrow && (wasNarrow || !remembered)) {
    // The list holds the longest name beside its state, the page at 1280 a table of five columns. Of what a
    // wider window has more, the page takes a fifth; the charts have the rest.
    const int page = std::min(pageWidthMost, pageWidth + std::max(0, width() - 1280) / 5);
    m_splitter->setSizes({listWidth, page, width() - listWidth - page});
  }
}

void MainWindow::closeEvent(QCloseEvent* event) {
  m_page->commitPending();
  QSettings().setValue("bench/geometry", saveGeometry());
  QMainWindow::closeEvent(event);
}

/// Enter presses the button that has the focus, as it does in a dialog.
void MainWindow::keyPressEvent(QKeyEvent* event) {
  auto* button = qobject_cast<QAbstractButton*>(QApplication::focusWidget());
  if (button && !event->isAutoRepeat() && isPlain(*event) && isEnter(*event)) {
    button->click();
  } else {
    QMainWindow::keyPressEvent(event);
  }
}

bool MainWindow::openFile(const QString& path) {
  auto file = MachineFile::open(path.toStdString());
  if (!file) {
    QMessageBox::warning(this, tr("Fettle"), QString::fromStdString(file.error()));
    return false;
  }
  rememberFile(path);
  takeDocument(std::move(*file));
  return true;
}

void MainWindow::takeDocument(std::unique_ptr<MachineFile> file) {
  if (m_document) {
    m_page->commitPending();
  }
  m_page->setDocument(nullptr, nullptr);
  m_model->setDocument(nullptr);
  m_captureCheck.reset();
  m_evaluator.reset();
  m_document = std::make_unique<Document>(std::move(file));
  m_evaluator = std::make_unique<Evaluator>(*m_document);
  m_model->setDocument(m_document.get());
  m_page->setDocument(m_document.get(), m_evaluator.get());
  m_benchClock.restart();
  connect(m_document.get(), &Document::changed, &m_refresh, &OncePerTurn::ask);
  connect(m_document.get(), &Document::resultHeld, this, &MainWindow::showChartsOf);
  connect(m_document.get(), &Document::resultHeld, &m_refresh, &OncePerTurn::ask);
  connect(m_document.get(), &Document::sessionShown, this, &MainWindow::refresh);
  connect(m_document.get(), &Document::changed, this, [this] { say({}); });
  connect(m_document.get(), &Document::failed, this, &MainWindow::say);
  m_damage.clear();
  say({});
  m_captureCheck = std::make_unique<CaptureCheck>(m_document->file().path(), m_document->history());
  connect(m_captureCheck.get(), &CaptureCheck::damageFound, this, [this](const QString& sentence) {
    m_damage = sentence;
    showMessage();
  });
  fitWidth();
  rebuildSessions();
  m_page->refresh();
  refresh();
  m_list->setFocus();
}

void MainWindow::chooseStep(const std::string& key) {
  const Step* step = findStep(key);
  if (!step) {
    return;
  }
  if (m_list->chosen() != key) {
    m_list->choose(key);
    return;  // comes back through the list
  }
  m_page->setStep(step);
  refreshCharts();
  if (m_help && m_help->isVisible()) {
    m_help->show(*step);
  }
}

void MainWindow::refresh() {
  m_model->refresh();
  for (auto* action : m_machineActions) {
    action->setEnabled(m_document != nullptr);
  }
  if (m_document) {
    m_header->show(*m_document);
    const QString name = QString::fromStdString(m_document->history().machine.sheet.value("name", ""));
    setWindowTitle(name.isEmpty() ? tr("Fettle") : tr("%1 – Fettle").arg(name));
  }
}

const StepResult* MainWindow::earlierResult() const {
  const StepRun* shown = m_page->run();
  if (!shown) {
    return nullptr;
  }
  const History& history = m_document->history();
  const StepResult* earlier = nullptr;
  for (const auto& run : history.runs) {
    const auto evaluated = history.evaluated.find(run.id);
    if (run.step == shown->step && run.subject == shown->subject && run.id < shown->id &&
        evaluated != history.evaluated.end() && evaluated->second.complete()) {
      earlier = &evaluated->second.result;
    }
  }
  return earlier;
}

void MainWindow::showChartsOf(RecordId run) {
  if (m_page->run() && m_page->run()->id == run) {
    m_side->showCharts(*m_page->step(), m_page->evaluated(), earlierResult());
    m_side->charts().view()->repaint();
  }
}

void MainWindow::refreshCharts() {
  if (const Step* step = m_page->step()) {
    m_side->showCharts(*step, m_page->evaluated(), earlierResult());
    m_side->showFindings(m_page->evaluated());
  }
}

void MainWindow::takeDroppedFile(const QString& path, const QString& fileName) {
  if (m_document) {
    takeFile(*m_document, *m_page->step(), m_page->run(), path, fileName, this);
  }
}

void MainWindow::showHelp() {
  if (!m_help) {
    m_help = new HelpView(this);
  }
  m_help->show(*m_page->step());
  m_help->show();
  m_help->raise();
}

void MainWindow::say(const QString& sentence) {
  m_said = sentence;
  showMessage();
}

void MainWindow::showMessage() {
  QStringList sentences;
  if (m_document) {
    const MachineFile& file = m_document->file();
    sentences << QString::fromStdString(file.readOnlySentence());
    for (const auto& loss : file.losses()) {
      sentences << QString::fromStdString(loss);
    }
  }
  sentences << m_damage << m_said;
  sentences.removeAll(QString());
  sentences.removeDuplicates();
  m_message->setText(sentences.join('\n'));
  m_message->setVisible(!sentences.isEmpty());
}

}  // namespace fettle::ui
