#pragma once
#include <QObject>
#include <QTimer>
#include <atomic>
#include <memory>
#include <string>

#include "core/fields/field.h"

namespace fettle::ui {

/// What came of reading a whole text.
struct IntakeOutcome {
  Json value;  ///< rows of a table, a grid; null for a capture
  std::size_t rows = 0;
  QString problem;  ///< one sentence; empty when the text can be taken in
  bool cancelled = false;
};

/// Reads a text as the evaluation will read it, in another thread, and tells how far it is. A new reading
/// replaces the one before.
class IntakeCheck : public QObject {
  Q_OBJECT
 public:
  using Bytes = std::shared_ptr<const std::string>;
  explicit IntakeCheck(QObject* parent = nullptr);
  ~IntakeCheck() override;
  void start(const Field& field, const Json& reference, const Bytes& bytes);
  void cancel();

 signals:
  void progressed(double done);
  void finished(const fettle::ui::IntakeOutcome& outcome);

 private:
  /// Shared with the thread, which never looks at this object.
  struct Shared {
    std::atomic<double> done = 0;
    std::atomic<bool> stop = false;
  };
  static IntakeOutcome read(const Field& field, const Json& reference, const Bytes& bytes, Shared& shared);

  std::shared_ptr<Shared> m_running;
  QTimer m_clock;
};

}  // namespace fettle::ui
