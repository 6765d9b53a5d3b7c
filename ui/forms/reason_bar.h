#pragma once
#include <QWidget>

class QLabel;
class QLineEdit;
class QPushButton;

namespace fettle::ui {

/// Asks in place for the reason to leave rows out.
class ReasonBar : public QWidget {
  Q_OBJECT
 public:
  explicit ReasonBar(QWidget* parent = nullptr);
  /// Shows itself with a question and takes the focus.
  void ask(const QString& question, const QString& confirmWord);

 signals:
  void answered(const QString& reason);
  void cancelled();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void confirm();
  void cancel();

  QLabel* m_question;
  QLineEdit* m_reason;
  QPushButton* m_confirm;
};

}  // namespace fettle::ui
