#pragma once
#include <QObject>
#include <QTimer>

class QScrollArea;

namespace fettle::ui {

/// Keeps what is being entered in sight of a page that scrolls: the widget with the focus, in a table its
/// current cell, and the sentence that refuses what was typed.
class FollowFocus : public QObject {
  Q_OBJECT
 public:
  explicit FollowFocus(QScrollArea* page);
  /// Brings it into view once the layout has settled.
  void follow() { m_later.start(); }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void bringIntoView();
  void show(const QWidget& part, const QRect& place);

  QScrollArea* m_page;
  QTimer m_later;
};

}  // namespace fettle::ui
