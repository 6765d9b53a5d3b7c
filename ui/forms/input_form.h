#pragma once
#include <QWidget>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/fields/field.h"
#include "ui/forms/editor_maker.h"
#include "ui/forms/entry_order.h"
#include "ui/forms/form_context.h"

class QVBoxLayout;

namespace fettle::ui {

class FieldEditor;
class FieldGroup;

/// The entry of a step, made from its fields. It shows an object of inputs and tells committed edits; it
/// computes nothing and keeps nothing. Numbers and choices stand side by side, tables over the full width;
/// a field whose condition does not apply is hidden.
class InputForm : public QWidget, public EntryOrder {
  Q_OBJECT
 public:
  explicit InputForm(EditorMaker makeEditor, QWidget* parent = nullptr);
  ~InputForm() override;

  void setFields(const std::vector<Field>& fields);
  /// Shows inputs; emits nothing, keeps focus, cursor and scroll position, and what is being typed unless
  /// its value changed.
  void setValues(const Json& inputs);
  void setReadOnly(bool readOnly);
  void setInstruments(std::vector<Instrument> instruments);
  void setInitials(const QString& initials);
  /// For tests: the clock that checklists read, and what stands for the file dialog.
  void setClock(std::function<QDateTime()> now);
  void setFileChooser(std::function<QStringList(QWidget*, const QString&)> chooser);

  /// Commits what is typed and not yet left, before the page changes or the file closes. @return the
  /// editor that refused some of it, with its sentence in sight; else null
  FieldEditor* commitPending();
  /// Puts the cursor on a place in the inputs: "margin", "marks[2].nozzle_x". @return whether it is here
  bool focusOn(const QString& path);
  /// Puts the cursor into the first entry that is seen.
  void focusOnFirst();
  QWidgetList entries() const override;
  /// After the last place the buttons of a dialog follow; on a page the cursor stays.
  void goBeyondLast() override;
  /// What Tab goes through besides: menus and instruments.
  QWidgetList menus() const;

 signals:
  /// A key of the inputs has this new value; null: nothing was entered. `what` is the undo text.
  void edited(const QString& path, const fettle::Json& newValue, const QString& what);
  /// A capture is to come from a file; path as "log" or "captures[3].capture".
  void fileChosen(const QString& path, const QString& fileName);
  /// A whole table or grid is to come from a file.
  void tableFileChosen(const QString& key, const QString& fileName);

 private:
  void connectEditor(FieldEditor& editor);
  void chooseInstrument(const std::vector<Field>& fields, const Instrument& instrument);
  void showConditions();

  EditorMaker m_makeEditor;
  FormContext m_context;
  std::vector<Field> m_fields;
  std::vector<FieldEditor*> m_editors;
  std::vector<FieldGroup*> m_groups;
  QVBoxLayout* m_layout;
  QWidgetList m_stops;  ///< as last put in order
  Json m_instruments;
  Json m_values = Json::object();
  bool m_readOnly = false;
};

}  // namespace fettle::ui
