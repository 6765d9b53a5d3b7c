#pragma once
#include "ui/theme/type_label.h"

namespace fettle::ui {

/// A line of small type that follows the size of the program's type: captions, reasons, remarks.
class SmallLabel : public TypeLabel {
  Q_OBJECT
 public:
  enum class Tone { dim, fault };
  explicit SmallLabel(const QString& text = {}, Tone tone = Tone::dim, QWidget* parent = nullptr);
  /// Shows a sentence over as many lines as it needs, and nothing at all when it is empty.
  void setSentence(const QString& sentence);
  bool isFault() const { return foregroundRole() == QPalette::BrightText; }
};

}  // namespace fettle::ui
