#include "ui/forms/intake_check.h"

#include <QFutureWatcher>
#include <QtConcurrentRun>

#include "core/history/evaluation.h"
#include "ui/forms/field_value.h"

namespace fettle::ui {
namespace {

constexpr int progressEvery = 50;  // ms

IntakeOutcome refused(const std::string& sentence) {
  return {{}, 0, QString::fromStdString(sentence), false};
}

IntakeOutcome outcomeOf(const tl::expected<Json, std::string>& value) {
  if (!value) {
    return refused(value.error());
  }
  return {*value, value->is_array() ? value->size() : memberOf(*value, "z").size(), {}, false};
}

}  // namespace

IntakeCheck::IntakeCheck(QObject* parent) : QObject(parent) {
  m_clock.setInterval(progressEvery);
  connect(&m_clock, &QTimer::timeout, this, [this] { emit progressed(m_running->done); });
}

IntakeCheck::~IntakeCheck() {
  cancel();
}

void IntakeCheck::cancel() {
  if (m_running) {
    m_running->stop = true;
  }
}

void IntakeCheck::start(const Field& field, const Json& reference, const Bytes& bytes) {
  cancel();
  m_running = std::make_shared<Shared>();
  auto* watcher = new QFutureWatcher<IntakeOutcome>(this);
  connect(watcher, &QFutureWatcherBase::finished, this, [this, watcher, mine = m_running] {
    watcher->deleteLater();
    if (mine == m_running) {  // else a newer reading has taken over
      m_clock.stop();
      emit finished(watcher->result());
    }
  });
  watcher->setFuture(QtConcurrent::run(
      [field, reference, bytes, mine = m_running] { return read(field, reference, bytes, *mine); }));
  m_clock.start();
}

IntakeOutcome IntakeCheck::read(const Field& field, const Json& reference, const Bytes& bytes,
                                Shared& shared) {
  IntakeFiles files([&](const Json&) -> tl::expected<std::string, std::string> { return *bytes; });
  files.setProgress([&](double done) {
    shared.done = done;
    return !shared.stop;
  });
  try {
    switch (field.kind) {
      case FieldKind::table:
        return outcomeOf(files.table(reference, field));
      case FieldKind::grid:
        return outcomeOf(files.grid(reference, field));
      default: {
        const auto capture = files.capture(reference, field);
        return capture ? IntakeOutcome{{}, (*capture)->rows(), {}, false} : refused(capture.error());
      }
    }
  } catch (const Cancelled&) {
    return {{}, 0, {}, true};
  }
}

}  // namespace fettle::ui
