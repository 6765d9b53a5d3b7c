#include "ui/editing/document.h"

#include <QDateTime>
#include <QTimer>
#include <algorithm>

#include "core/history/evaluation.h"
#include "core/history/new_run.h"
#include "ui/editing/record_command.h"

namespace fettle::ui {

std::string now() {
  return QDateTime::currentDateTime().toString(Qt::ISODate).toStdString();
}

namespace {

/// Time at the bench runs on beside the edits: undoing an edit of a session does not take it back.
Change withBenchTimeOf(Change change, const History& history) {
  for (auto* side : {&change.before, &change.after}) {
    auto* record = *side ? std::get_if<Session>(&**side) : nullptr;
    const Session* known = record ? history.session(record->id) : nullptr;
    if (known) {
      record->benchSeconds = known->benchSeconds;
    }
  }
  return change;
}

}  // namespace

Document::Document(std::unique_ptr<MachineFile> file, QObject* parent)
    : QObject(parent), m_file(std::move(file)) {
  if (!history().sessions.empty()) {
    m_session = history().sessions.back().id;
  }
}

Document::~Document() {
  keepResults();
}

void Document::showSession(RecordId session) {
  if (session != m_session && history().session(session)) {
    m_session = session;
    leaveRun();
    emit sessionShown();
  }
}

bool Document::editable() const {
  return whyNotEditable().isEmpty();
}

QString Document::whyNotEditable() const {
  if (m_file->readOnly() != ReadOnlyReason::none) {
    return QString::fromStdString(m_file->readOnlySentence());
  }
  if (history().sessions.empty()) {
    return tr("No session is open. Start one to enter readings.");
  }
  if (m_session != history().sessions.back().id) {
    return tr("An earlier session is shown; it is read only.");
  }
  return {};
}

bool Document::carryOut(const Change& wanted) {
  const Change change = withBenchTimeOf(wanted, history());
  const auto done = m_file->apply(change);
  m_refused = !done;
  if (!done) {
    emit failed(QString::fromStdString(done.error()));
    return false;
  }
  if (change.after && std::holds_alternative<Session>(*change.after) && !change.before) {
    m_session = idOf(*change.after);
    emit sessionShown();
  } else if (!history().session(m_session)) {  // the session on the screen was undone
    m_session = history().sessions.empty() ? 0 : history().sessions.back().id;
    emit sessionShown();
  }
  emit changed(change);
  return true;
}

bool Document::push(Change change) {
  if (change.isNothing()) {
    return true;
  }
  if (m_file->readOnly() != ReadOnlyReason::none) {
    emit failed(QString::fromStdString(m_file->readOnlySentence()));
    return false;
  }
  m_undo.push(new RecordCommand([this](const Change& one) { return carryOut(one); }, std::move(change)));
  return !m_refused;
}

std::optional<Change> Document::undo() {
  const auto* command = static_cast<const RecordCommand*>(m_undo.command(m_undo.index() - 1));
  if (!command) {
    return std::nullopt;
  }
  const Change change = command->change().reversed();
  m_undo.undo();
  return m_refused ? std::nullopt : std::optional(change);
}

std::optional<Change> Document::redo() {
  const auto* command = static_cast<const RecordCommand*>(m_undo.command(m_undo.index()));
  if (!command) {
    return std::nullopt;
  }
  const Change change = command->change();
  m_undo.redo();
  return m_refused ? std::nullopt : std::optional(change);
}

StepRun Document::newRun(const std::string& step, const std::string& subject) const {
  StepRun run;
  run.id = history().nextId();
  run.session = m_session;
  run.step = step;
  run.subject = subject;
  run.role = roleOfNewRun(history(), step, subject);
  return run;
}

bool Document::editRun(RecordId id, const QString& what, const std::function<void(StepRun&)>& edit) {
  const StepRun* before = history().run(id);
  if (!before || !editable()) {
    emit failed(editable() ? tr("This run is no longer there.") : whyNotEditable());
    return false;
  }
  StepRun after = *before;
  edit(after);
  return push({*before, after, what.toStdString()});
}

bool Document::standsAsEvidence(const StepRun& run) const {
  const auto evaluated = history().evaluated.find(run.id);
  const bool failed =
      evaluated != history().evaluated.end() && evaluated->second.result.verdict() == Verdict::fail;
  return run.settled() || (failed && run.id != m_atWork);
}

bool Document::beginRun(StepRun made, const std::string& key, const Json& value, const QString& what) {
  if (!editable()) {
    emit failed(whyNotEditable());
    return false;
  }
  setEntry(made, key, value);
  noteMeasuring(history(), made, now());
  const RecordId id = made.id;
  const bool done = push({std::nullopt, std::move(made), what.toStdString()});
  m_atWork = done ? id : m_atWork;
  return done;
}

bool Document::setInput(const std::string& step, RecordId run, const std::string& key, const Json& value,
                        const QString& what) {
  const StepRun* before = history().run(run);
  if (run == 0) {
    return beginRun(newRun(step, ""), key, value, what);
  }
  if (before && standsAsEvidence(*before)) {
    StepRun made = newRun(step, before->subject);
    made.inputs = before->inputs;
    setEntry(made, key, value);
    if (made.inputs == before->inputs) {
      return true;
    }
    const RecordId begun = made.id;
    const bool done = beginRun(std::move(made), key, value, what);
    if (done) {
      emit runBegun(run, begun);
    }
    return done;
  }
  const bool done = editRun(run, what, [&](StepRun& record) {
    setEntry(record, key, value);
    noteMeasuring(history(), record, now());
  });
  m_atWork = done ? run : m_atWork;
  return done;
}

bool Document::setNotes(const std::string& step, RecordId run, const QString& notes) {
  if (run == 0) {
    if (!editable()) {
      return false;
    }
    StepRun made = newRun(step, "");
    made.notes = notes.toStdString();
    return push({std::nullopt, made, tr("notes").toStdString()});
  }
  return editRun(run, tr("notes"), [&](StepRun& record) { record.notes = notes.toStdString(); });
}

bool Document::addRun(const std::string& step, const std::string& subject) {
  if (!editable()) {
    emit failed(whyNotEditable());
    return false;
  }
  StepRun run = newRun(step, subject);
  run.inputs = carriedOver(history(), step, subject);
  return push({std::nullopt, run, tr("new run").toStdString()});
}

bool Document::setMachine(MachineRecord machine, const QString& what) {
  return push({history().machine, std::move(machine), what.toStdString()});
}

bool Document::addPartChange(const std::string& group, const std::string& note) {
  return push(
      {std::nullopt, PartChange{history().nextId(), now(), group, note}, tr("part change").toStdString()});
}

bool Document::startSession(Session session) {
  session.id = history().nextId();
  return push({std::nullopt, std::move(session), tr("new session").toStdString()});
}

bool Document::editSession(Session session, const QString& what) {
  const Session* before = history().session(session.id);
  return before && push({*before, std::move(session), what.toStdString()});
}

bool Document::mark(const std::string& step, StepMark::Kind kind, const QString& reason) {
  StepMark record;
  record.id = history().nextId();
  record.session = m_session;
  record.step = step;
  record.kind = kind;
  record.reason = reason.toStdString();
  record.date = now();
  return push({std::nullopt, record, tr("mark").toStdString()});
}

bool Document::withdrawMark(const std::string& step, StepMark::Kind kind) {
  const auto& marks = history().marks;
  const auto found = std::find_if(marks.rbegin(), marks.rend(), [&](const StepMark& one) {
    return one.session == m_session && one.step == step && one.kind == kind;
  });
  return found != marks.rend() && push({*found, std::nullopt, tr("take back the mark").toStdString()});
}

void Document::holdResult(RecordId run, Evaluated evaluated) {
  m_file->hold(run, std::move(evaluated));
  emit resultHeld(run);
  // After the paint events that `resultHeld` asked for, so that the disk never delays the screen.
  QTimer::singleShot(50, this, &Document::keepResults);
}

void Document::keepResults() {
  if (m_file->readOnly() != ReadOnlyReason::none) {
    return;
  }
  if (const auto kept = m_file->keep(); !kept) {
    emit failed(QString::fromStdString(kept.error()));
  }
}

void Document::addBenchTime(double seconds) {
  const Session* session = history().session(m_session);
  if (!session || !editable()) {
    return;
  }
  Session after = *session;
  after.benchSeconds += seconds;
  const Change change{*session, after, {}};
  if (const auto done = m_file->apply(change); !done) {
    emit failed(QString::fromStdString(done.error()));
  }
}

}  // namespace fettle::ui
