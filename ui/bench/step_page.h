#pragma once
#include <QScrollArea>

#include "core/history/state.h"
#include "ui/bench/notes_editor.h"
#include "ui/bench/once_per_turn.h"
#include "ui/bench/results_panel.h"
#include "ui/editing/document.h"
#include "ui/editing/evaluator.h"
#include "ui/forms/input_form.h"

class QLabel;
class QProgressBar;
class QPushButton;

namespace fettle::ui {

class DropDown;
class FollowFocus;

/// The middle column: what to do, cautions, entry, results, notes of one step. It reads the document and
/// calls its verbs; what it shows follows from the document's news alone.
class StepPage : public QScrollArea {
  Q_OBJECT
 public:
  StepPage(const Palette& palette, QWidget* parent = nullptr);

  void setDocument(Document* document, Evaluator* evaluator);
  void setStep(const Step* step);
  const Step* step() const { return m_step; }
  /// The run on the page, or null.
  const StepRun* run() const;
  const Evaluated* evaluated() const;
  InputForm& form() { return *m_form; }
  /// Shows what the document holds now.
  void refresh();
  void commitPending();
  void chooseRun(RecordId run);
  /// Shows the run before (-1) or after (1) the one on the page.
  void walkRuns(int by);
  /// What decide() asks now, as words for a menu; empty when there is nothing to decide.
  QString decision() const;

 public slots:
  /// A new run of the step in the open session, with the cursor in its first entry.
  void startRun();
  void enterReadings();
  /// Accepts the run, or takes its acceptance back; when it cannot be accepted, goes to what is missing.
  void toggleAcceptance();
  /// Asks why a blocked step is done all the same, or why a change does not touch a step that is due.
  void decide();

 signals:
  void runShown();  ///< another run, or another result of it
  void helpWanted();
  void fileChosen(const QString& path, const QString& fileName);
  void tableFileChosen(const QString& key, const QString& fileName);

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  /// The first entry of a step begins its run.
  void followNewRun();
  void buildHead(class QVBoxLayout& column);
  void buildEntry(class QVBoxLayout& column);
  void buildResults(class QVBoxLayout& column);
  /// What stays in sight below the page: the verdict and acceptance.
  void buildFoot();
  void placeFoot();
  /// Whether the run on the page may be changed: an earlier session's may not.
  bool runEditable() const;
  void goToWhatIsMissing();
  void showRuns();
  void showState();
  /// Tab goes through entry, results, acceptance and notes, then menus, instruments and the head.
  void orderTabs();
  void askOverride();
  void askNotAffected();
  /// An edit of a run that stands as evidence has begun another: shows that one, and offers to put a slip
  /// right in the first instead.
  void followBegunRun(RecordId from, RecordId begun);
  void askSlip();
  void showSlip();

  const Palette& m_palette;
  OncePerTurn m_refresh{[this] { refresh(); }};
  Document* m_document = nullptr;
  Evaluator* m_evaluator = nullptr;
  const Step* m_step = nullptr;
  RecordId m_run = 0;
  /// The last edit, and the runs it led from and to, while it may still have been a slip.
  struct Edit {
    RecordId from = 0, begun = 0;
    std::string key;
    Json value;
    int undoIndex = 0;  ///< of the undo stack after it
  };
  Edit m_edit;
  QLabel* m_slipText;
  QPushButton* m_slip;
  QLabel* m_title;
  QLabel* m_purpose;
  QLabel* m_caution;
  QLabel* m_standing;
  QPushButton* m_decide;  ///< override, or not affected; or take that back
  DropDown* m_runs;
  QPushButton* m_newRun;
  QLabel* m_entryTitle;
  QPushButton* m_helpButton;
  InputForm* m_form;
  FollowFocus* m_follow;
  QWidgetList m_stops;  ///< as last put in order
  QProgressBar* m_progress;
  QPushButton* m_cancel;
  ResultsPanel* m_results;
  QFrame* m_foot;
  QLabel* m_verdict;
  QPushButton* m_again;
  QPushButton* m_accept;
  NotesEditor* m_notes;
};

}  // namespace fettle::ui
