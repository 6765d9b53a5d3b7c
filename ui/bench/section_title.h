#pragma once
#include <QLabel>

namespace fettle::ui {

/// The small capitals over a group: ENTER, RESULTS, NOTES.
class SectionTitle : public QLabel {
  Q_OBJECT
 public:
  explicit SectionTitle(const QString& text, QWidget* parent = nullptr);
};

}  // namespace fettle::ui
