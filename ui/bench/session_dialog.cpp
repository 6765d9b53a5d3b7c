#include "ui/bench/session_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/number_text.h"
#include "ui/forms/grow_to_contents.h"
#include "ui/forms/keys.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {

SessionDialog::SessionDialog(const Session& session, const QString& title, QWidget* parent)
    : QDialog(parent), m_session(session) {
  setObjectName("sessionDialog");
  setWindowTitle(title);
  setMinimumWidth(520);
  auto* form = new QFormLayout(this);
  const auto add = [&](const QString& label, const char* name, const std::string& value) {
    auto* edit = new QLineEdit(QString::fromStdString(value));
    edit->setObjectName(name);
    form->addRow(label, edit);
    return edit;
  };
  m_operator = add(tr("&Operator"), "operatorEdit", session.person);
  m_reason = add(tr("&Reason"), "reasonEdit", session.reason);
  m_reason->setPlaceholderText(tr("new machine, new hot end, yearly check"));
  m_filament = add(tr("&Filament"), "filamentEdit", session.filament);
  m_filament->setPlaceholderText(tr("material, colour, lot"));
  m_hours = add(tr("&Print hours so far"), "hoursEdit",
                session.printHours ? formatNumber(*session.printHours) : "");
  m_problem = new SmallLabel({}, SmallLabel::Tone::fault);
  m_problem->setObjectName("sessionProblem");
  form->addRow(m_problem);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  m_ok = buttons->button(QDialogButtonBox::Ok);
  form->addRow(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(m_hours, &QLineEdit::textChanged, this, &SessionDialog::check);
  check();
  m_operator->setFocus();
  m_operator->selectAll();  // another person's name is typed over it
}

void SessionDialog::keyPressEvent(QKeyEvent* event) {
  if (auto* line = qobject_cast<QLineEdit*>(focusWidget()); line && isEnter(*event)) {
    if (line == m_hours && !m_ok->isEnabled()) {
      line->selectAll();  // as everywhere: what was refused is replaced by what is typed next
    } else {
      focusNextChild();  // as everywhere: Enter goes on to the next entry
    }
    return;
  }
  QDialog::keyPressEvent(event);
}

void SessionDialog::check() {
  const std::string hours = m_hours->text().trimmed().toStdString();
  const auto number = numberFromKeyboard(hours);
  const bool fine = hours.empty() || (number && *number >= 0);
  m_problem->setSentence(fine     ? QString()
                         : number ? tr("Print hours cannot be negative.")
                                  : QString::fromStdString(number.error()));
  m_ok->setEnabled(fine);
  growToContents(*this);
}

Session SessionDialog::session() const {
  Session session = m_session;
  session.person = m_operator->text().trimmed().toStdString();
  session.reason = m_reason->text().trimmed().toStdString();
  session.filament = m_filament->text().trimmed().toStdString();
  const auto hours = numberFromKeyboard(m_hours->text().trimmed().toStdString());
  session.printHours = m_hours->text().trimmed().isEmpty() || !hours ? std::nullopt : std::optional(*hours);
  return session;
}

}  // namespace fettle::ui
