#include "ui/forms/small_label.h"

namespace fettle::ui {

SmallLabel::SmallLabel(const QString& text, Tone tone, QWidget* parent)
    : TypeLabel(&Fonts::small, text, parent) {
  setForegroundRole(tone == Tone::dim ? QPalette::PlaceholderText : QPalette::BrightText);
  setTextFormat(Qt::PlainText);
  if (text.isEmpty()) {
    hide();  // it takes no room before it says something
  }
}

void SmallLabel::setSentence(const QString& sentence) {
  setWordWrap(true);
  setText(sentence);
  setVisible(!sentence.isEmpty());
}

}  // namespace fettle::ui
