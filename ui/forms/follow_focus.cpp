#include "ui/forms/follow_focus.h"

#include <QApplication>
#include <QKeyEvent>
#include <QLayout>
#include <QScrollArea>
#include <algorithm>

#include "ui/forms/cell_view.h"
#include "ui/forms/field_editor.h"
#include "ui/forms/field_group.h"
#include "ui/forms/keys.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {
namespace {

/// Keys that type, walk or paste; those that scroll the page or command the window are no entry.
bool isEntryKey(const QKeyEvent& key) {
  const bool isArrow = key.key() >= Qt::Key_Home && key.key() <= Qt::Key_Down;
  return key.matches(QKeySequence::Paste) || (isPlain(key) && (isArrow || !key.text().isEmpty()));
}

}  // namespace

FollowFocus::FollowFocus(QScrollArea* page) : QObject(page), m_page(page) {
  m_later.setSingleShot(true);
  m_later.setInterval(0);
  connect(&m_later, &QTimer::timeout, this, &FollowFocus::bringIntoView);
  connect(qApp, &QApplication::focusChanged, this, &FollowFocus::follow);
  qApp->installEventFilter(this);
}

bool FollowFocus::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::KeyPress && isEntryKey(*static_cast<QKeyEvent*>(event))) {
    follow();
  }
  return QObject::eventFilter(watched, event);
}

void FollowFocus::bringIntoView() {
  QWidget* focus = QApplication::focusWidget();
  QWidget* body = m_page->widget();
  if (focus == nullptr || body == nullptr || !body->isAncestorOf(focus)) {
    return;
  }
  body->layout()->activate();
  QWidget* part = focus;
  QRect place = focus->rect();
  for (QWidget* up = focus; up != body; up = up->parentWidget()) {
    if (const auto* table = qobject_cast<CellView*>(up); table && table->currentIndex().isValid()) {
      part = table->viewport();
      place = table->visualRect(table->currentIndex());
    }
    if (qobject_cast<FieldEditor*>(up) != nullptr || qobject_cast<FieldGroup*>(up) != nullptr) {
      for (const auto* label : up->findChildren<SmallLabel*>()) {
        if (label->isFault() && label->isVisible()) {
          show(*label, label->rect());
        }
      }
    }
  }
  show(*part, place);  // last: should both not fit, the entry itself is seen
}

void FollowFocus::show(const QWidget& part, const QRect& place) {
  const int around = 2 * part.fontMetrics().height();  // its caption too
  const QPoint centre = part.mapTo(m_page->widget(), place.center());
  m_page->ensureVisible(centre.x(), centre.y(), 0,
                        std::min(place.height() / 2 + around, m_page->viewport()->height() / 2));
}

}  // namespace fettle::ui
