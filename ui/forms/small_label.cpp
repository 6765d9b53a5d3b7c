#include "ui/forms/small_label.h"

#include <QApplication>
#include <QEvent>

#include "ui/theme/look.h"

namespace fettle::ui {
namespace {

QFont smallFont() {
  return fontsOf(QApplication::font().pointSizeF()).small;
}

}  // namespace

SmallLabel::SmallLabel(const QString& text, Tone tone, QWidget* parent) : QLabel(text, parent) {
  setForegroundRole(tone == Tone::dim ? QPalette::PlaceholderText : QPalette::BrightText);
  setTextFormat(Qt::PlainText);
  setFont(smallFont());
}

void SmallLabel::setSentence(const QString& sentence) {
  setWordWrap(true);
  setText(sentence);
  setVisible(!sentence.isEmpty());
}

bool SmallLabel::event(QEvent* event) {
  if (event->type() == QEvent::ApplicationFontChange) {
    setFont(smallFont());
  }
  return QLabel::event(event);
}

}  // namespace fettle::ui
