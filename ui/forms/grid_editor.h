#pragma once
#include "ui/forms/cell_view.h"
#include "ui/forms/field_editor.h"
#include "ui/forms/form_context.h"
#include "ui/forms/grid_value.h"

class QMenu;

namespace fettle::ui {

class EntryBox;
class FileLine;
class GridModel;
class InstrumentBar;
class SmallLabel;

/// Heights over a net of positions, the back of the bed on top. Positions are typed as lists or laid out
/// evenly; a whole grid is pasted or taken from a file through the intake dialog.
class GridEditor : public FieldEditor {
  Q_OBJECT
 public:
  GridEditor(Field field, const FormContext& context, QWidget* parent = nullptr);
  void setReadOnly(bool readOnly) override;
  void showInstruments(const Json& chosen) override;
  bool commitPending() override;
  QWidgetList entries() const override;

 protected:
  void showValue(const Json& value) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void build();
  void connectParts();
  void fillMenu(QMenu& menu);
  EntryBox* makeAxisBox(GridAxis axis);
  void commitAxis(GridAxis axis);
  void take(const GridValue& grid, const QString& what);
  void run(CellCommand command);
  void paste();
  void pasteWhole();
  void clear();
  void openText(const QString& name, const std::string& bytes);
  void layOutEvenly();
  void chooseFile();
  void refresh();

  const FormContext& m_context;
  GridModel* m_model;
  CellView* m_view;
  EntryBox* m_x;
  EntryBox* m_y;
  FileLine* m_fileLine;
  QWidget* m_body;
  SmallLabel* m_problem;
  SmallLabel* m_front;
  InstrumentBar* m_instrumentBar;
  Json m_instruments;
  bool m_readOnly = false;
};

}  // namespace fettle::ui
