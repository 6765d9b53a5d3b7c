#pragma once
#include <QPainter>
#include <QWidget>

namespace fettle::ui {

/// The frame that says where the keys go, for widgets whose style hardly shows it. Call it in a paint
/// event.
inline void drawFocusFrame(QWidget& widget) {
  if (widget.hasFocus()) {
    QPainter painter(&widget);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(widget.palette().color(QPalette::Link), 2));
    painter.drawRoundedRect(widget.rect().adjusted(1, 1, -1, -1), 3, 3);
  }
}

}  // namespace fettle::ui
