#pragma once
#include "ui/forms/cell_view.h"
#include "ui/forms/field_editor.h"
#include "ui/forms/form_context.h"
#include "ui/forms/table_memory.h"
#include "ui/forms/table_menu.h"
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
class TableEditor : public FieldEditor, public TableActions {
  Q_OBJECT
 public:
  TableEditor(Field field, const FormContext& context, QWidget* parent = nullptr);

  void setReadOnly(bool readOnly) override;
  void showInstruments(const Json& chosen) override;
  bool commitPending() override;
  void focusOn(int row, const std::string& column) override;

  void run(CellCommand command) override;
  void chooseFile() override;
  bool isReadOnly() const override { return m_readOnly; }
  const TableMemory& memory() const override { return m_memory; }
  void remember(TableMemory memory) override;
  bool mayHide(int column) const override;
  const TableModel& model() const override { return *m_model; }
  const Json& instruments() const override { return m_instruments; }
  InstrumentBar& instrumentBar() override { return *m_instrumentBar; }

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
  void openFiles(const QStringList& files, int row);
  /// Text that does not fit as it stands goes through the preview.
  void openText(const QString& name, const std::string& bytes);
  void exclude();
  bool holdsCaptures() const { return captureColumn() >= 0; }
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
