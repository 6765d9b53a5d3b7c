#include "ui/bench/section_title.h"

#include "ui/theme/look.h"

namespace fettle::ui {

SectionTitle::SectionTitle(const QString& text, QWidget* parent) : QLabel(text, parent) {
  QFont small = fontsOf(font().pointSizeF()).small;
  small.setWeight(QFont::DemiBold);
  small.setCapitalization(QFont::AllUppercase);
  small.setLetterSpacing(QFont::AbsoluteSpacing, 0.6);
  setFont(small);
  QPalette dim = palette();
  dim.setColor(QPalette::WindowText, dim.color(QPalette::PlaceholderText));
  setPalette(dim);
}

}  // namespace fettle::ui
