#include "ui/bench/section_title.h"

namespace fettle::ui {

SectionTitle::SectionTitle(const QString& text, QWidget* parent) : TypeLabel(&Fonts::small, text, parent) {
  fitType();  // now that it can add to it
  QPalette dim = palette();
  dim.setColor(QPalette::WindowText, dim.color(QPalette::PlaceholderText));
  setPalette(dim);
}

void SectionTitle::decorate(QFont& font) const {
  font.setWeight(QFont::DemiBold);
  font.setCapitalization(QFont::AllUppercase);
  font.setLetterSpacing(QFont::AbsoluteSpacing, 0.6);
}

}  // namespace fettle::ui
