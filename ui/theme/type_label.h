#pragma once
#include <QApplication>
#include <QEvent>
#include <QLabel>

#include "ui/theme/look.h"

namespace fettle::ui {

/// A label in one of the types of the program, whatever size that has at present: `&Fonts::small`.
class TypeLabel : public QLabel {
 public:
  explicit TypeLabel(QFont Fonts::*type, const QString& text = {}, QWidget* parent = nullptr)
      : QLabel(text, parent), m_type(type) {
    fitType();
  }

 protected:
  /// For what a kind of label adds to its type.
  virtual void decorate(QFont& /*font*/) const {}
  void fitType() {
    QFont font = fontsOf(QApplication::font().pointSizeF()).*m_type;
    decorate(font);
    setFont(font);
  }
  bool event(QEvent* event) override {
    if (event->type() == QEvent::ApplicationFontChange) {
      fitType();
    }
    return QLabel::event(event);
  }

 private:
  QFont Fonts::*m_type;
};

}  // namespace fettle::ui
