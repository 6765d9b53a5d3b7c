#pragma once
#include <QObject>
#include <QUndoStack>
#include <functional>
#include <memory>

#include "core/steps/contract/step.h"
#include "core/store/machine_file.h"

namespace fettle::ui {

/// The open machine as the screen sees it. Widgets read `history()` and call one verb for every edit; each
/// verb is one undo command and one transaction on disk. `changed` is the only news: it is the same for do,
/// undo and redo.
class Document : public QObject {
  Q_OBJECT

 public:
  explicit Document(std::unique_ptr<MachineFile> file, QObject* parent = nullptr);
  ~Document() override;

  const History& history() const { return m_file->history(); }
  MachineFile& file() { return *m_file; }
  QUndoStack& undoStack() { return m_undo; }
  /// Takes the last edit back, or does it again. Answers the change carried out, for the screen to show
  /// where it was; nothing when there was none or the disk refused.
  std::optional<Change> undo();
  std::optional<Change> redo();

  /// The session on the screen; the last one unless an earlier one is looked at.
  RecordId session() const { return m_session; }
  void showSession(RecordId session);
  /// Whether edits are possible: the file can be written and the last session is shown.
  bool editable() const;
  /// One sentence why not.
  QString whyNotEditable() const;

  // Verbs. Each answers false, after `failed`, when the disk refused; nothing has changed then.

  /// Sets one top-level input of a run. Run 0 stands for a new run of `step`. A run that stands as evidence
  /// (accepted, adopted from, or left with verdict fail) stays as it is: a new run begins with its entries,
  /// and `runBegun` says so.
  bool setInput(const std::string& step, RecordId run, const std::string& key, const Json& value,
                const QString& what);
  bool setNotes(const std::string& step, RecordId run, const QString& notes);
  /// A new run of a step in the open session, with a subject where the step has one and with the entries
  /// that carry over from the run before.
  bool addRun(const std::string& step, const std::string& subject);
  /// The page of a run was left: with verdict fail it stands as evidence from now on.
  void leaveRun() { m_atWork = 0; }
  /// Changes one run as `edit` does; see run_verbs.h.
  bool editRun(RecordId run, const QString& what, const std::function<void(StepRun&)>& edit);
  bool setMachine(MachineRecord machine, const QString& what);
  bool addPartChange(const std::string& group, const std::string& note);
  bool startSession(Session session);
  bool editSession(Session session, const QString& what);
  bool mark(const std::string& step, StepMark::Kind kind, const QString& reason);
  /// Takes back the last mark of a kind that a step has in the open session.
  bool withdrawMark(const std::string& step, StepMark::Kind kind);

  /// Results come from the evaluator: kept in memory at once, on disk after the next paint.
  void holdResult(RecordId run, Evaluated evaluated);

  /// Seconds since the last call are added to the session's time at the bench, without an undo entry.
  void addBenchTime(double seconds);

 signals:
  void changed(const fettle::Change& change);
  void resultHeld(fettle::RecordId run);
  void sessionShown();
  void failed(const QString& sentence);
  /// An edit of a run that stands as evidence has begun a new one.
  void runBegun(fettle::RecordId from, fettle::RecordId begun);

 private:
  bool carryOut(const Change& change);
  bool push(Change change);
  StepRun newRun(const std::string& step, const std::string& subject) const;
  bool standsAsEvidence(const StepRun& run) const;
  bool beginRun(StepRun made, const std::string& key, const Json& value, const QString& what);
  void keepResults();

  std::unique_ptr<MachineFile> m_file;
  QUndoStack m_undo;
  RecordId m_session = 0;
  RecordId m_atWork = 0;   // the run being entered: not evidence yet, whatever its verdict
  bool m_refused = false;  // the last carried-out change was refused by the disk
};

/// ISO 8601 local time to the second.
std::string now();

}  // namespace fettle::ui
