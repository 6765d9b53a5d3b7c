#pragma once
#include <QFutureWatcher>
#include <QObject>
#include <atomic>
#include <map>
#include <memory>
#include <optional>

#include "core/history/evaluation.h"
#include "ui/editing/document.h"

namespace fettle::ui {

/// Evaluates a run whenever its inputs change: at once where no file is read or the last evaluation of the
/// run was quick, in a worker otherwise. A result that comes back after the inputs changed again is
/// dropped.
class Evaluator : public QObject {
  Q_OBJECT

 public:
  explicit Evaluator(Document& document, QObject* parent = nullptr);
  ~Evaluator() override;

  /// Evaluates what has no current result, for example after opening a file.
  void bringUpToDate(RecordId run);
  /// Evaluates again with the values of now.
  void evaluateAgain(RecordId run);
  bool isBusy(RecordId run) const { return m_busy == run; }

 public slots:
  void cancel();

 signals:
  /// 0..1 while a worker is busy with a run; negative when it is done or cancelled.
  void progressed(fettle::RecordId run, double done);

 private:
  void onChange(const Change& change);
  /// A result, and how long the worker took for it.
  struct Worked {
    std::optional<Evaluated> evaluated;
    qint64 ms = 0;
  };

  /// Takes no longer than a frame of the screen. @return false when it would have
  bool evaluatedAtOnce(const StepRun& run);
  /// Holds the contents of the files of a run, and of no other.
  void takeFiles(const StepRun& run);
  void start(const StepRun& run);
  void finish();

  Document& m_document;
  std::map<std::string, tl::expected<std::string, std::string>>
      m_bytes;                           // blobs of the run evaluated last, read before it starts
  std::unique_ptr<IntakeFiles> m_files;  // used by one thread at a time
  std::shared_ptr<WorkMemory> m_memory = std::make_shared<WorkMemory>();  // the same
  QFutureWatcher<Worked> m_watcher;
  std::atomic<bool> m_stop{false};
  RecordId m_busy = 0;
  Json m_busyInputs;     // what it is busy with
  RecordId m_quick = 0;  // the run whose files are known so well that it may be evaluated at once
  std::vector<RecordId> m_waiting;
};

}  // namespace fettle::ui
