#include <QInputDialog>

#include "core/history/state.h"
#include "ui/bench/step_page.h"

namespace fettle::ui {

QString StepPage::decision() const {
  if (!m_document || !m_document->editable()) {
    return {};
  }
  switch (standingOf(m_document->history(), *m_step, m_document->session()).state) {
    case StepState::blocked:
      return tr("Override…");
    case StepState::overridden:
      return tr("Withdraw override");
    case StepState::due:
      return tr("Not affected…");
    case StepState::notAffected:
      return tr("Affected after all");
    default:
      return {};
  }
}

void StepPage::decide() {
  switch (standingOf(m_document->history(), *m_step, m_document->session()).state) {
    case StepState::blocked:
      askOverride();
      break;
    case StepState::overridden:
      m_document->withdrawMark(m_step->key, StepMark::Kind::overridden);
      break;
    case StepState::due:
      askNotAffected();
      break;
    case StepState::notAffected:
      m_document->withdrawMark(m_step->key, StepMark::Kind::notAffected);
      break;
    default:
      break;
  }
}

void StepPage::askOverride() {
  bool agreed = false;
  const QString reason = QInputDialog::getText(
      this, tr("Override"), tr("Why may this step be done all the same? The reason is shown from now on."),
      QLineEdit::Normal, {}, &agreed);
  if (agreed && !reason.trimmed().isEmpty()) {
    m_document->mark(m_step->key, StepMark::Kind::overridden, reason.trimmed());
  }
}

void StepPage::askNotAffected() {
  bool agreed = false;
  const QString reason =
      QInputDialog::getText(this, tr("Not affected"), tr("Why does the change not touch this step?"),
                            QLineEdit::Normal, {}, &agreed);
  if (agreed && !reason.trimmed().isEmpty()) {
    m_document->mark(m_step->key, StepMark::Kind::notAffected, reason.trimmed());
  }
}

}  // namespace fettle::ui
