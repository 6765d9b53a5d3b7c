#pragma once
#include <QUndoCommand>

#include "core/history/change.h"

namespace fettle::ui {

class Document;

/// The one undo command: a change of one record. Notes typed in a row merge into one entry.
class RecordCommand : public QUndoCommand {
 public:
  RecordCommand(Document& document, Change change);
  void redo() override;
  void undo() override;
  int id() const override { return m_isNotes ? 1 : -1; }
  bool mergeWith(const QUndoCommand* later) override;

 private:
  Document& m_document;
  Change m_change;
  bool m_isNotes;
};

}  // namespace fettle::ui
