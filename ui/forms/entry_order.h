#pragma once
#include <QWidget>

namespace fettle::ui {

/// What has places of entry that Enter and Tab go through: a form. Editors reach the form around them
/// through this alone.
class EntryOrder {
 public:
  virtual ~EntryOrder() = default;
  /// The places of entry, first to last.
  virtual QWidgetList entries() const = 0;
  /// Enter was pressed in the last place.
  virtual void goBeyondLast() = 0;
};

/// Goes on to the next place of entry of the form around a widget. @return false when there is no form
/// around it
bool goOnFrom(QWidget& place);

/// Lets Tab go through these, unless it did so `before`.
void orderTabs(const QWidgetList& stops, QWidgetList& before);

}  // namespace fettle::ui
