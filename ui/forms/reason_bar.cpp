#include "ui/forms/reason_bar.h"

#include "ui/forms/keys.h"

#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace fettle::ui {

ReasonBar::ReasonBar(QWidget* parent)
    : QWidget(parent), m_question(new QLabel), m_reason(new QLineEdit), m_confirm(new QPushButton) {
  setObjectName("reasonBar");
  m_reason->setObjectName("reasonLineEdit");
  m_confirm->setObjectName("reasonConfirmButton");
  auto* cancelButton = new QPushButton(tr("Cancel"));
  cancelButton->setObjectName("reasonCancelButton");
  m_question->setBuddy(m_reason);
  auto* head = new QHBoxLayout;
  head->addWidget(m_question, 1);
  head->addWidget(m_confirm);
  head->addWidget(cancelButton);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(4);
  layout->addLayout(head);
  layout->addWidget(m_reason);  // the whole row: a reason is a sentence
  connect(m_confirm, &QPushButton::clicked, this, &ReasonBar::confirm);
  connect(cancelButton, &QPushButton::clicked, this, &ReasonBar::cancel);
  connect(m_reason, &QLineEdit::textChanged, this,
          [this](const QString& text) { m_confirm->setEnabled(!text.trimmed().isEmpty()); });
  hide();
}

void ReasonBar::ask(const QString& question, const QString& confirmWord) {
  m_question->setText(question);
  m_reason->setAccessibleName(question);
  m_confirm->setText(confirmWord);
  m_reason->clear();
  m_confirm->setEnabled(false);
  m_reason->setPlaceholderText(tr("the reason, kept with the row"));
  show();
  m_reason->setFocus(Qt::OtherFocusReason);
}

void ReasonBar::keyPressEvent(QKeyEvent* event) {
  if (isEnter(*event)) {
    confirm();
  } else if (event->key() == Qt::Key_Escape) {
    cancel();
  } else {
    QWidget::keyPressEvent(event);
  }
}

void ReasonBar::confirm() {
  const QString reason = m_reason->text().trimmed();
  if (reason.isEmpty()) {
    return;
  }
  hide();
  emit answered(reason);
}

void ReasonBar::cancel() {
  hide();
  emit cancelled();
}

}  // namespace fettle::ui
