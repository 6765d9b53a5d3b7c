#include "ui/editing/record_command.h"

namespace fettle::ui {
namespace {

/// Whether a change touches nothing but the notes of a run.
bool changesOnlyNotes(const Change& change) {
  const auto* before = change.before ? std::get_if<StepRun>(&*change.before) : nullptr;
  const auto* after = change.after ? std::get_if<StepRun>(&*change.after) : nullptr;
  if (!before || !after || before->notes == after->notes) {
    return false;
  }
  StepRun same = *after;
  same.notes = before->notes;
  return same == *before;
}

}  // namespace

RecordCommand::RecordCommand(CarryOut carryOut, Change change)
    : QUndoCommand(QString::fromStdString(change.what)),
      m_carryOut(std::move(carryOut)),
      m_change(std::move(change)),
      m_isNotes(changesOnlyNotes(m_change)) {}

void RecordCommand::redo() {
  setObsolete(!m_carryOut(m_change));
}

void RecordCommand::undo() {
  setObsolete(!m_carryOut(m_change.reversed()));
}

bool RecordCommand::mergeWith(const QUndoCommand* later) {
  const auto* other = static_cast<const RecordCommand*>(later);
  if (!m_isNotes || !other->m_isNotes || m_change.after != other->m_change.before) {
    return false;
  }
  m_change.after = other->m_change.after;
  return true;
}

}  // namespace fettle::ui
