#pragma once
#include <QUndoCommand>

#include <functional>

#include "core/history/change.h"

namespace fettle::ui {

/// The one undo command: a change of one record. Notes typed in a row merge into one entry.
class RecordCommand : public QUndoCommand {
 public:
  /// Carries a change out; answers whether it was done.
  using CarryOut = std::function<bool(const Change&)>;

  RecordCommand(CarryOut carryOut, Change change);
  void redo() override;
  void undo() override;
  const Change& change() const { return m_change; }
  int id() const override { return m_isNotes ? 1 : -1; }
  bool mergeWith(const QUndoCommand* later) override;

 private:
  CarryOut m_carryOut;
  Change m_change;
  bool m_isNotes;
};

}  // namespace fettle::ui
