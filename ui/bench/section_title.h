#pragma once
#include <QLabel>

namespace fettle::ui {

/// The small capitals over a group: ENTER, RESULTS, NOTES.
class SectionTitle : public QLabel {
  Q_OBJECT
 public:
  explicit SectionTitle(const QString& text, QWidget* parent = nullptr);

 protected:
  bool event(QEvent* event) override;

 private:
  void fitType();
};

}  // namespace fettle::ui
