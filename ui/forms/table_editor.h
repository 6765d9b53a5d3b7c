#pragma once
#include "ui/forms/cell_view.h"
#include "ui/forms/field_editor.h"
#include "ui/forms/form_context.h"
#include "ui/forms/table_memory.h"
#include "ui/forms/typed_word.h"

class QMenu;
class QToolButton;

namespace fettle::ui {

class CellDelegate;
class FileLine;
class InstrumentBar;
class ReasonBar;
class SmallLabel;
class TableModel;
struct TableChange;

/// Rows of readings. Every change is one edit of the whole table: a cell, a paste, removed rows.
class TableEditor : public FieldEditor {
  Q_OBJECT
 public:
  TableEditor(Field field, const FormContext& context, QWidget* parent = nullptr);

  void setReadOnly(bool readOnly) override;
  void showInstruments(const Json& chosen) override;
  bool commitPending() override;
  void focusOn(int row, const std::string& column) override;

  /// What the menu of the table does; keys do the same.
  void run(CellCommand command);
  void chooseFile();
  void openFiles(const QStringList& files, int row);
  bool isReadOnly() const { return m_readOnly; }
  bool holdsCaptures() const { return captureColumn() >= 0; }
  const TableMemory& memory() const { return m_memory; }
  void remember(TableMemory memory);
  /// Whether the user may hide the column: nothing in it and nothing needed.
  bool mayHide(int column) const;
  const TableModel& model() const { return *m_model; }
  const Json& instruments() const { return m_instruments; }
  InstrumentBar& instrumentBar() { return *m_instrumentBar; }

 protected:
  void showValue(const Json& value) override;

 private:
  void build();
  void connectView();
  void apply(const TableChange& change);
  void refresh();
  bool handleKey(const QModelIndex& index, QKeyEvent* event);
  /// Takes a letter of a choice or of a yes or no.
  void answerByLetter(const QModelIndex& index, const QString& letter);
  void setCell(const QModelIndex& index, const Json& value);
  void paste();
  /// Text that does not fit as it stands goes through the preview.
  void openText(const QString& name, const std::string& bytes);
  void exclude();
  int captureColumn() const;
  QString pathOf(int row, int column) const;
  std::vector<const Field*> columnsFrom(int column) const;

  const FormContext& m_context;
  TableModel* m_model;
  CellView* m_view;
  CellDelegate* m_delegate;
  QToolButton* m_menuButton;
  FileLine* m_fileLine;
  SmallLabel* m_problem;
  SmallLabel* m_excluded;
  ReasonBar* m_reasonBar;
  InstrumentBar* m_instrumentBar;
  Json m_instruments;
  TypedWord m_word;       ///< letters typed into a choice or a yes or no
  std::set<int> m_asked;  ///< rows the reason is asked for
  TableMemory m_memory;
  bool m_isRefusalNew = false;  ///< something typed into a cell was refused and nobody asked since
  bool m_readOnly = false;
};

}  // namespace fettle::ui
