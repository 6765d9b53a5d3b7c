#pragma once
#include <QComboBox>

#include "core/steps/contract/field.h"

namespace fettle::ui {

/// A list of the choices of a field. Where nothing counts while blank there is an entry for "not chosen".
/// Choosing from the opened list commits at once; stepping with keys or the wheel commits on Enter, Tab or
/// leaving, and Escape takes it back. The wheel does nothing unless the box has the focus.
class ChoiceBox : public QComboBox {
  Q_OBJECT
 public:
  explicit ChoiceBox(const Field& field, QWidget* parent = nullptr);
  /// Shows a value, what counts while blank for null; emits nothing.
  void showValue(const Json& value);
  Json chosen() const;
  void setReadOnly(bool readOnly) { m_readOnly = readOnly; }
  void commitPending();

 signals:
  void chosenByUser();

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  Json m_fallback;
  int m_shown = 0;
  bool m_stepping = false;
  bool m_readOnly = false;
};

}  // namespace fettle::ui
