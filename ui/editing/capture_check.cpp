#include "ui/editing/capture_check.h"

#include <QtConcurrent>

#include "core/store/files_check.h"

namespace fettle::ui {
namespace {

/// What the check asks of a history, without its results.
History withoutResults(const History& history) {
  History records;
  records.sessions = history.sessions;
  records.runs = history.runs;
  return records;
}

}  // namespace

CaptureCheck::CaptureCheck(const std::string& path, const History& history, QObject* parent)
    : QObject(parent) {
  connect(&m_watcher, &QFutureWatcherBase::finished, this, [this] {
    if (const QString sentence = m_watcher.result(); !sentence.isEmpty()) {
      emit damageFound(sentence);
    }
  });
  m_watcher.setFuture(QtConcurrent::run([this, path, records = withoutResults(history)] {
    const auto check = checkFiles(path, records, [this] { return m_stop.load(); });
    return QString::fromStdString(damageSentence(check.damaged));
  }));
}

CaptureCheck::~CaptureCheck() {
  m_stop = true;
  m_watcher.waitForFinished();
}

}  // namespace fettle::ui
