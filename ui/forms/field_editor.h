#pragma once
#include <QWidget>

#include "core/fields/field.h"

class QVBoxLayout;

namespace fettle::ui {

class SmallLabel;

/// Shows and edits the value of one field. It owns no truth: what is committed is told to the owner, who
/// answers with setValue(). Programmatic changes emit nothing, an equal value neither.
class FieldEditor : public QWidget {
  Q_OBJECT
 public:
  FieldEditor(Field field, QWidget* parent);

  const Field& field() const { return m_field; }
  const Json& value() const { return m_value; }
  QString label() const { return QString::fromStdString(m_field.label); }

  /// Shows a value. What is being typed stays when the value is the one shown already.
  void setValue(const Json& value);
  virtual void setReadOnly(bool readOnly) = 0;
  /// Shows the inputs' "instruments": what columns were read with.
  virtual void showInstruments(const Json& /*chosen*/) {}
  /// Commits what is typed but not yet committed. @return false when it cannot be accepted
  virtual bool commitPending() { return true; }
  /// Puts the cursor into the editor; row from 1 and column matter to tables.
  virtual void focusOn(int row, const std::string& column);
  /// What is typed or chosen into, in the order Enter and Tab go through it.
  virtual QWidgetList entries() const { return {focusProxy()}; }

 signals:
  /// The whole new value of the field; `what` is the undo text.
  void committed(const fettle::Json& value, const QString& what);
  /// One sentence on what is typed, empty when all is well.
  void problemChanged(const QString& sentence);
  /// A file was chosen for this place, see InputPath; it was not read.
  void fileChosen(const QString& path, const QString& fileName);
  /// A file was chosen that holds the whole table or grid; it was not read.
  void tableFileChosen(const QString& fileName);
  void instrumentChosen(const std::vector<fettle::Field>& fields, const fettle::Instrument& instrument);

 protected:
  virtual void showValue(const Json& value) = 0;
  /// Takes over a value and tells the owner, unless it is the value already.
  void commit(const Json& value, const QString& what);
  /// The caption above the editor, a label that leads to `buddy`.
  SmallLabel* makeCaption(QWidget* buddy);
  /// Caption, unit and help as the accessible name and description of a widget.
  void nameFor(QWidget* widget) const;
  QString childName(const char* ending) const;

 private:
  Field m_field;
  Json m_value;
};

}  // namespace fettle::ui
