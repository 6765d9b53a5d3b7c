#include "ui/editing/evaluator.h"

#include <QElapsedTimer>
#include <QtConcurrent>
#include <algorithm>
#include <set>

#include "core/history/intake_reference.h"

namespace fettle::ui {
namespace {

constexpr qint64 mostAtOnce = 10;  ///< ms; longer would be felt

/// The files a run refers to, by hash.
std::set<std::string> hashesOf(const Json& inputs) {
  std::set<std::string> hashes;
  eachFileReference(inputs, [&](const Json& reference) {
    if (reference.contains("sha256")) {
      hashes.insert(reference["sha256"].get<std::string>());
    }
  });
  return hashes;
}

}  // namespace

Evaluator::Evaluator(Document& document, QObject* parent) : QObject(parent), m_document(document) {
  m_files = std::make_unique<IntakeFiles>(
      [this](const Json& reference) -> tl::expected<std::string, std::string> {
        const auto found = m_bytes.find(reference.value("sha256", ""));
        if (found == m_bytes.end()) {  // a reference without a hash
          return tl::unexpected(tr("%1 is not in the machine file.")
                                    .arg(QString::fromStdString(reference.value("file", "")))
                                    .toStdString());
        }
        return found->second;
      });
  connect(&document, &Document::changed, this, &Evaluator::onChange);
  connect(&m_watcher, &QFutureWatcherBase::finished, this, &Evaluator::finish);
}

Evaluator::~Evaluator() {
  m_stop = true;
  m_watcher.waitForFinished();
}

void Evaluator::onChange(const Change& change) {
  const auto* run = change.after ? std::get_if<StepRun>(&*change.after) : nullptr;
  const auto* before = change.before ? std::get_if<StepRun>(&*change.before) : nullptr;
  if (run && (!before || before->inputs != run->inputs || before->subject != run->subject)) {
    evaluateAgain(run->id);
  }
}

void Evaluator::bringUpToDate(RecordId id) {
  const StepRun* run = m_document.history().run(id);
  const auto& evaluated = m_document.history().evaluated;
  const auto found = evaluated.find(id);
  const bool isUnderWay = run && m_busy == id && m_busyInputs == run->inputs;
  if (run && !isUnderWay && (found == evaluated.end() || !isCurrent(found->second, *run))) {
    evaluateAgain(id);
  }
}

void Evaluator::evaluateAgain(RecordId id) {
  const StepRun* run = m_document.history().run(id);
  if (!run) {
    return;
  }
  if (hashesOf(run->inputs).empty()) {
    IntakeFiles none([](const Json&) -> tl::expected<std::string, std::string> {
      return tl::unexpected(std::string("there is no file"));
    });
    m_document.holdResult(id, evaluateRun(m_document.history(), *run, none));
    return;
  }
  if (m_busy == 0 && m_waiting.empty() && id == m_quick && evaluatedAtOnce(*run)) {
    return;
  }
  if (std::find(m_waiting.begin(), m_waiting.end(), id) == m_waiting.end()) {
    m_waiting.push_back(id);
  }
  if (m_busy == 0) {
    finish();
  } else if (m_busy == id) {
    m_stop = true;  // its inputs have changed under it
  }
}

void Evaluator::takeFiles(const StepRun& run) {
  const auto hashes = hashesOf(run.inputs);
  std::erase_if(m_bytes, [&](const auto& known) {  // what could not be read may be readable by now
    return !hashes.contains(known.first) || !known.second;
  });
  for (const auto& hash : hashes) {
    if (!m_bytes.contains(hash)) {
      m_bytes.emplace(hash, m_document.file().blob(hash));
    }
  }
}

bool Evaluator::evaluatedAtOnce(const StepRun& run) {
  takeFiles(run);
  QElapsedTimer clock;
  clock.start();
  bool isLate = false;
  const auto inTime = [&](double) {
    isLate = isLate || clock.elapsed() >= mostAtOnce;
    return !isLate;
  };
  m_files->setProgress(inTime);
  PreparedRun prepared = prepareRun(m_document.history(), run);
  prepared.context.memory = m_memory;
  const Evaluated evaluated = evaluatePrepared(prepared, *m_files, inTime);
  if (isLate) {  // what came of it says only that it was broken off
    m_quick = 0;
    return false;
  }
  m_document.holdResult(run.id, evaluated);
  return true;
}

void Evaluator::start(const StepRun& run) {
  m_busy = run.id;
  m_busyInputs = run.inputs;
  m_stop = false;
  takeFiles(run);
  emit progressed(run.id, 0);
  const auto progress = [this, id = run.id](double done) {
    emit progressed(id, done);
    return !m_stop.load();
  };
  m_files->setProgress(progress);
  PreparedRun prepared = prepareRun(m_document.history(), run);
  prepared.context.memory = m_memory;
  m_watcher.setFuture(QtConcurrent::run([this, progress, prepared = std::move(prepared)]() -> Worked {
    QElapsedTimer clock;
    clock.start();
    Evaluated evaluated = evaluatePrepared(prepared, *m_files, progress);
    return m_stop.load() ? Worked() : Worked{std::move(evaluated), clock.elapsed()};
  }));
}

void Evaluator::finish() {
  if (m_busy != 0) {
    const RecordId done = m_busy;
    m_busy = 0;
    const StepRun* run = m_document.history().run(done);
    const Worked worked = m_watcher.result();
    if (run && worked.evaluated && isCurrent(*worked.evaluated, *run)) {
      m_quick = worked.ms < mostAtOnce ? done : m_quick;
      m_document.holdResult(done, *worked.evaluated);
    }
    emit progressed(done, -1);
  }
  while (m_busy == 0 && !m_waiting.empty()) {
    const StepRun* next = m_document.history().run(m_waiting.front());
    m_waiting.erase(m_waiting.begin());
    if (next) {
      start(*next);
    }
  }
}

void Evaluator::cancel() {
  m_waiting.clear();
  m_stop = true;
}

}  // namespace fettle::ui
