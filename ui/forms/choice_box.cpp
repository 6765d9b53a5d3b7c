#include "ui/forms/choice_box.h"

#include <QKeyEvent>
#include <QScopedValueRollback>
#include <QSignalBlocker>
#include <QWheelEvent>

namespace fettle::ui {
namespace {

// The items hold the keys as text; the entry for "not chosen" holds none.
Json keyOf(const QVariant& data) {
  return data.isValid() ? Json(data.toString().toStdString()) : Json();
}

}  // namespace

ChoiceBox::ChoiceBox(const Field& field, QWidget* parent) : QComboBox(parent), m_fallback(field.fallback) {
  if (m_fallback.is_null()) {
    addItem(QStringLiteral("–"));
    setItemData(0, tr("not chosen"), Qt::AccessibleTextRole);
  }
  for (const auto& choice : field.choices) {
    addItem(QString::fromStdString(choice.label), QString::fromStdString(choice.key));
  }
  setFocusPolicy(Qt::StrongFocus);
  setSizeAdjustPolicy(QComboBox::AdjustToContents);
  connect(this, &QComboBox::activated, this, [this] {
    if (!m_stepping) {
      commitPending();
    }
  });
}

void ChoiceBox::showValue(const Json& value) {
  const QSignalBlocker blocker(this);
  const Json& counts = value.is_null() ? m_fallback : value;
  m_shown = 0;
  for (int i = 0; i < count(); ++i) {
    if (keyOf(itemData(i)) == counts) {
      m_shown = i;
    }
  }
  setCurrentIndex(m_shown);
}

Json ChoiceBox::chosen() const {
  return keyOf(currentData());
}

void ChoiceBox::commitPending() {
  if (currentIndex() != m_shown) {
    m_shown = currentIndex();
    emit chosenByUser();
  }
}

void ChoiceBox::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
      commitPending();
      focusNextChild();
      event->accept();
      return;
    case Qt::Key_Escape:
      if (currentIndex() != m_shown) {
        setCurrentIndex(m_shown);
        event->accept();
        return;
      }
      break;
    default:
      break;
  }
  if (m_readOnly && event->key() != Qt::Key_Tab && event->key() != Qt::Key_Backtab) {
    event->ignore();
    return;
  }
  const QScopedValueRollback stepping(m_stepping, true);
  QComboBox::keyPressEvent(event);
}

void ChoiceBox::wheelEvent(QWheelEvent* event) {
  if (!hasFocus() || m_readOnly) {
    event->ignore();  // the page scrolls
    return;
  }
  const QScopedValueRollback stepping(m_stepping, true);
  QComboBox::wheelEvent(event);
}

void ChoiceBox::mousePressEvent(QMouseEvent* event) {
  if (!m_readOnly) {
    QComboBox::mousePressEvent(event);
  }
}

void ChoiceBox::focusOutEvent(QFocusEvent* event) {
  if (event->reason() != Qt::PopupFocusReason) {
    commitPending();
  }
  QComboBox::focusOutEvent(event);
}

}  // namespace fettle::ui
