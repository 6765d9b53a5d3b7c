#pragma once
#include <QDialog>

#include "core/history/history.h"

class QLineEdit;

namespace fettle::ui {

/// Asks what a session is about: operator, reason, filament, print hours.
class SessionDialog : public QDialog {
  Q_OBJECT
 public:
  SessionDialog(const Session& session, const QString& title, QWidget* parent = nullptr);
  Session session() const;

 private:
  void check();
  Session m_session;
  QLineEdit* m_operator;
  QLineEdit* m_reason;
  QLineEdit* m_filament;
  QLineEdit* m_hours;
  class QLabel* m_problem;
  class QPushButton* m_ok;
};

}  // namespace fettle::ui
