#include "ui/forms/yes_no_editor.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/forms/entry_order.h"
#include "ui/forms/field_value.h"
#include "ui/forms/keys.h"
#include "ui/forms/small_label.h"
#include "ui/theme/focus_frame.h"

namespace fettle::ui {
namespace {

class AnswerButton : public QToolButton {
 protected:
  void paintEvent(QPaintEvent* event) override {
    QToolButton::paintEvent(event);
    drawFocusFrame(*this);
  }
};

}  // namespace

YesNoEditor::YesNoEditor(Field described, QWidget* parent)
    : FieldEditor(std::move(described), parent), m_yes(makeButton(true)), m_no(makeButton(false)) {
  setObjectName(childName("YesNoEditor"));
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(2);
  layout->addWidget(makeCaption(m_yes));
  auto* buttons = new QHBoxLayout;
  buttons->setSpacing(4);
  buttons->addWidget(m_yes);
  buttons->addWidget(m_no);
  layout->addLayout(buttons);
  setFocusProxy(m_yes);
}

QToolButton* YesNoEditor::makeButton(bool isYes) {
  auto* button = new AnswerButton;
  const QString word = valueText(field(), isYes);
  button->setText(word);
  button->setCheckable(true);
  button->setFocusPolicy(Qt::StrongFocus);
  button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  button->setObjectName(childName(isYes ? "YesButton" : "NoButton"));
  nameFor(button);
  button->setAccessibleName(label() + ": " + word);
  button->installEventFilter(this);
  connect(button, &QToolButton::clicked, this,
          [this, isYes](bool checked) { answer(checked ? Json(isYes) : Json()); });
  return button;
}

void YesNoEditor::setReadOnly(bool readOnly) {
  m_readOnly = readOnly;
}

QWidgetList YesNoEditor::entries() const {
  return {m_yes, m_no};
}

void YesNoEditor::showValue(const Json& value) {
  for (const auto& [button, answer] : {std::pair{m_yes, Json(true)}, std::pair{m_no, Json(false)}}) {
    const QString word = valueText(field(), answer);
    button->setChecked(value == answer);
    button->setText(value == answer ? QStringLiteral("✓ ") + word : word);  // not by colour alone
  }
}

void YesNoEditor::answer(const Json& given) {
  showValue(m_readOnly ? value() : given);
  if (!m_readOnly) {
    commit(given, label());
  }
}

void YesNoEditor::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Delete || event->key() == Qt::Key_Backspace) {
    answer({});
  } else if (isEnter(*event)) {
    if (!m_word.holdsEnter()) {
      goOnFrom(*m_no);  // one answer, one Enter
    }
  } else if (isPrinted(*event)) {
    answer(m_word.answer(field(), value(), event->text()));
    emit problemChanged(m_word.problemOf(field()));
  } else {
    FieldEditor::keyPressEvent(event);
  }
}

bool YesNoEditor::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::FocusOut) {
    m_word.end();
    emit problemChanged({});
  }
  return FieldEditor::eventFilter(watched, event);
}

}  // namespace fettle::ui
