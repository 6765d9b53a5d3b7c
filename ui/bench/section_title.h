#pragma once
#include "ui/theme/type_label.h"

namespace fettle::ui {

/// The small capitals over a group: ENTER, RESULTS, NOTES.
class SectionTitle : public TypeLabel {
  Q_OBJECT
 public:
  explicit SectionTitle(const QString& text, QWidget* parent = nullptr);

 protected:
  void decorate(QFont& font) const override;
};

}  // namespace fettle::ui
