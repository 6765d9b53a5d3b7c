#pragma once
#include <QLineEdit>

namespace fettle::ui {

/// A line of text that is committed when editing ends: Enter (which goes on to the next editor), Tab or
/// leaving it. Escape brings back what was shown. While nothing is typed, undo and redo are the window's.
class EntryBox : public QLineEdit {
  Q_OBJECT
 public:
  explicit EntryBox(QWidget* parent = nullptr);
  /// Replaces the text as if it had never been touched; emits nothing.
  void showText(const QString& text);
  /// Marks the text as one that cannot be accepted.
  void setInvalid(bool invalid);

 signals:
  void leaving();   ///< what is typed is meant to be committed
  void restored();  ///< the user took back what was typed

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  QString m_shown;
};

}  // namespace fettle::ui
