#pragma once
#include <QPlainTextEdit>
#include <QTimer>

namespace fettle::ui {

/// Notes of a run; what is typed is committed every second and when the editor is left.
class NotesEditor : public QPlainTextEdit {
  Q_OBJECT
 public:
  explicit NotesEditor(QWidget* parent = nullptr);
  /// Shows text without telling; keeps what is being typed when it is the same record's.
  void showText(const QString& text);
  void commitPending();

 signals:
  void committed(const QString& text);

 protected:
  void focusOutEvent(QFocusEvent* event) override;

 private:
  QTimer m_timer;
  QString m_committed;
};

}  // namespace fettle::ui
