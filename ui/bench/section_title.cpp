#include "ui/bench/section_title.h"

#include <QApplication>
#include <QEvent>

#include "ui/theme/look.h"

namespace fettle::ui {

SectionTitle::SectionTitle(const QString& text, QWidget* parent) : QLabel(text, parent) {
  fitType();
  QPalette dim = palette();
  dim.setColor(QPalette::WindowText, dim.color(QPalette::PlaceholderText));
  setPalette(dim);
}

void SectionTitle::fitType() {
  QFont small = fontsOf(QApplication::font().pointSizeF()).small;
  small.setWeight(QFont::DemiBold);
  small.setCapitalization(QFont::AllUppercase);
  small.setLetterSpacing(QFont::AbsoluteSpacing, 0.6);
  setFont(small);
}

bool SectionTitle::event(QEvent* event) {
  if (event->type() == QEvent::ApplicationFontChange) {
    fitType();
  }
  return QLabel::event(event);
}

}  // namespace fettle::ui
