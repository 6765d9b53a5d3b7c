#pragma once
#include <QElapsedTimer>
#include <QMainWindow>
#include <memory>

#include "ui/bench/once_per_turn.h"
#include "ui/editing/document.h"
#include "ui/editing/evaluator.h"
#include "ui/theme/palette.h"

class QLabel;
class QSplitter;
class QTabBar;

namespace fettle::ui {

class CaptureCheck;
class ChartSide;
class HeaderBar;
class HelpView;
class StartPage;
class StepList;
class StepListModel;
class StepPage;

/// The bench: step list, entry and results, charts and findings around one open machine.
class MainWindow : public QMainWindow {
  Q_OBJECT
 public:
  explicit MainWindow(const Palette& palette, QWidget* parent = nullptr);
  ~MainWindow() override;

  /// Opens a machine file; says in a dialog what stands in the way.
  bool openFile(const QString& path);
  void chooseStep(const std::string& step);
  Document* document() { return m_document.get(); }
  StepPage& page() { return *m_page; }

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void closeEvent(QCloseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void buildBench();
  void buildMenus();
  void buildFileMenu();
  void buildSessionMenu();
  void buildStepMenu();
  void buildViewMenu();
  void takeDocument(std::unique_ptr<MachineFile> file);
  void fitWidth();
  void refresh();
  /// At once: the eye is on the chart; figures and findings follow in the next turn.
  void showChartsOf(RecordId run);
  void refreshCharts();
  const StepResult* earlierResult() const;
  void takeDroppedFile(const QString& path, const QString& fileName);

  void undo();
  void redo();
  /// Goes to the step an edit taken back or done again belongs to, and says so when that was out of sight.
  void showPlaceOf(const Change& change, bool redone);

  void newMachine();
  void askOpen();
  void openDemo();
  void rebuildRecent();
  void saveCopy();
  void exportHistory();
  void writeReport();
  void startSession();
  void editSession();
  void rebuildSessions();
  void addPartChange();
  void editMachine();
  void showSettings();
  void showHelp();
  /// A sentence that stays until the next edit.
  void say(const QString& sentence);
  void showMessage();

  const Palette& m_palette;
  OncePerTurn m_refresh{[this] { refresh(); }};
  std::unique_ptr<Document> m_document;
  std::unique_ptr<Evaluator> m_evaluator;
  std::unique_ptr<CaptureCheck> m_captureCheck;
  QElapsedTimer m_benchClock;
  HeaderBar* m_header;
  StepListModel* m_model;
  StepList* m_list;
  StepPage* m_page;
  ChartSide* m_side;
  QSplitter* m_splitter;
  QTabBar* m_narrowTabs;
  StartPage* m_start;
  QLabel* m_message;
  QString m_damage;  ///< of captures, once they were looked at
  QString m_said;
  HelpView* m_help = nullptr;
  class QMenu* m_recentMenu = nullptr;
  class QMenu* m_sessionsMenu = nullptr;
  std::vector<class QAction*> m_machineActions;  ///< those that need an open machine
};

}  // namespace fettle::ui
