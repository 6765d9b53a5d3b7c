#pragma once
#include <QComboBox>

#include "ui/forms/typed_word.h"

namespace fettle::ui {

/// A list of words for entry by keys. Arrows and Space open it, letters choose at once, Enter goes on. The
/// wheel and the page keys belong to the page: turning or scrolling changes no choice.
class DropDown : public QComboBox {
  Q_OBJECT
 public:
  explicit DropDown(QWidget* parent = nullptr);
  void setReadOnly(bool readOnly) { m_readOnly = readOnly; }

 signals:
  /// Why typed letters choose nothing; empty when all is well.
  void problemChanged(const QString& sentence);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  void takeLetter(const QString& letter);

  TypedWord m_word;
  bool m_readOnly = false;
};

}  // namespace fettle::ui
