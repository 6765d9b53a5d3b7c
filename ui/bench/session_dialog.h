#pragma once
#include <QDialog>

#include "core/history/history.h"

class QKeyEvent;
class QLineEdit;
class QPushButton;

namespace fettle::ui {

/// Asks what a session is about: operator, reason, filament, print hours.
class SessionDialog : public QDialog {
  Q_OBJECT
 public:
  SessionDialog(const Session& session, const QString& title, QWidget* parent = nullptr);
  Session session() const;

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void check();
  Session m_session;
  QLineEdit* m_operator;
  QLineEdit* m_reason;
  QLineEdit* m_filament;
  QLineEdit* m_hours;
  class SmallLabel* m_problem;
  QPushButton* m_ok;
};

}  // namespace fettle::ui
