#pragma once
#include <QFutureWatcher>
#include <QObject>
#include <atomic>

#include "core/history/history.h"

namespace fettle::ui {

/// Compares the files taken into a machine file with their hashes, in a worker, so that opening does not
/// wait for it. Ends with its owner.
class CaptureCheck : public QObject {
  Q_OBJECT
 public:
  CaptureCheck(const std::string& path, const History& history, QObject* parent = nullptr);
  ~CaptureCheck() override;

 signals:
  /// One sentence that names the damaged files; not sent when all are sound.
  void damageFound(const QString& sentence);

 private:
  QFutureWatcher<QString> m_watcher;
  std::atomic<bool> m_stop = false;
};

}  // namespace fettle::ui
