#pragma once
#include <QObject>
#include <functional>
#include <utility>

namespace fettle::ui {

/// Does a piece of work once after all that asked for it in the same turn of the event loop: an entry
/// changes a record and, right after, its result; the screen is brought up to date for both together.
class OncePerTurn : public QObject {
  Q_OBJECT
 public:
  explicit OncePerTurn(std::function<void()> work) : m_work(std::move(work)) {}

 public slots:
  void ask() {
    if (!std::exchange(m_asked, true)) {
      QMetaObject::invokeMethod(this, &OncePerTurn::work, Qt::QueuedConnection);
    }
  }

 private:
  void work() {
    m_asked = false;
    m_work();
  }

  std::function<void()> m_work;
  bool m_asked = false;
};

}  // namespace fettle::ui
