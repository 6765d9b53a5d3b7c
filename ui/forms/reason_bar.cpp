#include "ui/forms/reason_bar.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

namespace fettle::ui {

ReasonBar::ReasonBar(QWidget* parent)
    : QWidget(parent), m_question(new QLabel), m_reason(new QLineEdit), m_confirm(new QPushButton) {
  setObjectName("reasonBar");
  m_reason->setObjectName("reasonLineEdit");
  m_confirm->setObjectName("reasonConfirmButton");
  auto* cancelButton = new QPushButton(tr("Cancel"));
  cancelButton->setObjectName("reasonCancelButton");
  m_question->setBuddy(m_reason);
  auto* layout = new QHBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(m_question);
  layout->addWidget(m_reason, 1);
  layout->addWidget(m_confirm);
  layout->addWidget(cancelButton);
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
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
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
