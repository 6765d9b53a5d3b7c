#include "ui/forms/entry_order.h"

#include <algorithm>

namespace fettle::ui {

bool goOnFrom(QWidget& place) {
  EntryOrder* order = nullptr;
  for (QWidget* up = place.parentWidget(); up != nullptr && order == nullptr; up = up->parentWidget()) {
    order = dynamic_cast<EntryOrder*>(up);
  }
  if (order == nullptr) {
    return false;
  }
  const QWidgetList all = order->entries();
  const auto next = std::find_if(all.begin() + all.indexOf(&place) + 1, all.end(),
                                 [](const QWidget* w) { return w->isVisible() && w->isEnabled(); });
  if (next != all.end()) {
    (*next)->setFocus(Qt::TabFocusReason);
  } else {
    order->goBeyondLast();
  }
  return true;
}

void orderTabs(const QWidgetList& stops, QWidgetList& before) {
  if (stops == before) {
    return;
  }
  before = stops;
  for (qsizetype i = 1; i < stops.size(); ++i) {
    QWidget::setTabOrder(stops[i - 1], stops[i]);
  }
}

}  // namespace fettle::ui
