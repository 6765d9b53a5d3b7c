#include "ui/forms/drop_down.h"

#include <QKeyEvent>
#include <QStyleOptionComboBox>
#include <QStylePainter>
#include <QWheelEvent>

#include "ui/forms/entry_order.h"
#include "ui/forms/keys.h"
#include "ui/theme/focus_frame.h"

namespace fettle::ui {

DropDown::DropDown(QWidget* parent) : QComboBox(parent) {
  setFocusPolicy(Qt::StrongFocus);
}

void DropDown::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  const bool isArrow = key == Qt::Key_Up || key == Qt::Key_Down;
  const bool opens = isPlain(*event)
                         ? isArrow || key == Qt::Key_F4 || (key == Qt::Key_Space && !m_word.isOpen())
                         : isArrow && event->modifiers() == Qt::AltModifier;
  if (isEnter(*event)) {
    if (event->modifiers() & Qt::ControlModifier) {
      event->ignore();
    } else if (!m_word.holdsEnter() && !goOnFrom(*this)) {
      focusNextChild();
    }
  } else if (opens) {
    if (!m_readOnly) {
      showPopup();
    }
  } else if (isPrinted(*event)) {
    takeLetter(event->text());
  } else {
    event->ignore();  // the page keys scroll the page
  }
}

void DropDown::takeLetter(const QString& letter) {
  if (m_readOnly) {
    return;
  }
  QStringList words;
  for (int i = 0; i < count(); ++i) {
    words << itemText(i);
  }
  const int wanted = m_word.add(words, currentIndex(), letter);
  if (wanted != currentIndex()) {
    setCurrentIndex(wanted);
    emit activated(wanted);
  }
  emit problemChanged(m_word.problem());
}

void DropDown::wheelEvent(QWheelEvent* event) {
  event->ignore();
}

void DropDown::mousePressEvent(QMouseEvent* event) {
  if (!m_readOnly) {
    QComboBox::mousePressEvent(event);
  }
}

void DropDown::focusOutEvent(QFocusEvent* event) {
  m_word.end();
  emit problemChanged({});
  QComboBox::focusOutEvent(event);
}

void DropDown::paintEvent(QPaintEvent* /*event*/) {
  QStyleOptionComboBox option;
  initStyleOption(&option);
  QStyleOption arrow = option;
  arrow.rect = style()->subControlRect(QStyle::CC_ComboBox, &option, QStyle::SC_ComboBoxArrow, this);
  QStylePainter painter(this);  // flat, as the other fields: the style would raise it
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(palette().color(QPalette::Mid));
  painter.setBrush(palette().color(m_readOnly || !isEnabled() ? QPalette::Window : QPalette::Base));
  painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 3, 3);
  painter.drawPrimitive(QStyle::PE_IndicatorArrowDown, arrow);
  painter.drawControl(QStyle::CE_ComboBoxLabel, option);
  painter.end();
  drawFocusFrame(*this);
}

}  // namespace fettle::ui
