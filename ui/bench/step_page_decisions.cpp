#include <QHBoxLayout>
#include <QInputDialog>
#include <QLabel>
#include <QPushButton>
#include <algorithm>

#include "core/history/state.h"
#include "core/report/report_words.h"
#include "ui/bench/day.h"
#include "ui/bench/headline.h"
#include "ui/bench/step_page.h"
#include "ui/editing/run_verbs.h"

namespace fettle::ui {

void StepPage::buildFoot() {
  m_foot = new QFrame(this);
  m_foot->setObjectName("stepFoot");
  m_verdict = new QLabel;
  m_verdict->setObjectName("verdictLabel");
  m_again = new QPushButton(tr("Evaluate with today's values"));
  m_again->setObjectName("againButton");
  m_accept = new QPushButton;
  m_accept->setObjectName("acceptButton");
  auto* row = new QHBoxLayout(m_foot);
  row->setContentsMargins(18, 5, 18, 5);
  row->addWidget(m_verdict, 1);
  row->addWidget(m_again);
  row->addWidget(m_accept);
  connect(m_again, &QPushButton::clicked, this, [this] { m_evaluator->evaluateAgain(m_run); });
  connect(m_accept, &QPushButton::clicked, this, &StepPage::toggleAcceptance);
}

void StepPage::placeFoot() {
  const int height = m_foot->sizeHint().height();
  setViewportMargins(0, 0, 0, height);
  m_foot->setGeometry(0, this->height() - height, width(), height);
}

void StepPage::resizeEvent(QResizeEvent* event) {
  QScrollArea::resizeEvent(event);
  placeFoot();
}

void StepPage::showState() {
  const StepStanding standing = standingOf(m_document->history(), *m_step, m_document->session());
  QStringList sentences;
  if (m_document->file().readOnly() == ReadOnlyReason::none && !m_document->editable()) {
    sentences << m_document->whyNotEditable();  // of the file the window says it above
  }
  if (run() && run()->session != m_document->session()) {
    sentences << tr("Shown as accepted on %1, in an earlier session.").arg(dayInWords(run()->acceptedOn));
    if (m_document->editable()) {
      sentences.last() += " " + tr("A new run begins a measurement of today.");
    }
  }
  if (!standing.why.empty()) {
    sentences << QString::fromStdString(standing.why);
  }
  const Evaluated* result = evaluated();
  const int faults = result ? countFindings(result->result, Severity::fault) : 0;
  if (run() && run()->accepted() && faults > 0) {
    sentences << tr("Accepted with %1.").arg(faultsInWords(faults));
  }
  const bool complete = result && result->complete();
  const bool older = run() && result && usesOlderValues(*result, m_document->history(), *run());
  if (older) {
    sentences << tr(
        "Evaluated with older values: the machine sheet, a value found or an accepted result has "
        "changed since.");
  }
  m_standing->setText(sentences.join("\n"));
  m_standing->setVisible(!sentences.isEmpty());
  m_decide->setText(decision());
  m_decide->setVisible(!m_decide->text().isEmpty());
  m_again->setVisible(older && runEditable());
  const bool accepted = run() && run()->accepted();
  const Verdict verdict = complete ? result->result.verdict() : Verdict::none;
  const bool beside = run() && !run()->accepted() && standing.state == StepState::accepted;
  const StepState state = run() && (beside || run()->inputs.empty())
                              ? stateOfRun(m_document->history(), *run())
                              : standing.state;
  QStringList standsAt{QString::fromStdString(stateGlyph(state) + " " + stateWord(state))};
  if (faults > 0) {
    standsAt << faultsInWords(faults);
  }
  if (verdict != Verdict::none) {
    standsAt << QString::fromStdString(verdictText(verdict));
  }
  m_verdict->setText(standsAt.join(QStringLiteral(" · ")));
  m_accept->setText(accepted ? tr("Withdraw acceptance") : tr("Accept"));
  m_accept->setEnabled(runEditable() && (accepted || complete));
}

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

void StepPage::followBegunRun(RecordId from, RecordId begun) {
  if (from == m_run) {
    m_edit.from = from;
    m_edit.begun = begun;
    m_run = begun;
  }
}

void StepPage::showSlip() {
  const bool offered = m_edit.begun != 0;
  m_slipText->setVisible(offered);
  m_slip->setVisible(offered);
  if (!offered) {
    return;
  }
  const auto runs = m_document->history().runsOf(m_step->key, m_document->session());
  const auto at =
      std::find_if(runs.begin(), runs.end(), [&](const StepRun* run) { return run->id == m_edit.from; });
  const auto number = 1 + std::distance(runs.begin(), at);
  m_slipText->setText(
      tr("Run %1 stands as evidence and stays as it is; this entry has begun a new run.").arg(number));
  m_slip->setText(tr("It was a slip in run %1…").arg(number));
}

void StepPage::askSlip() {
  bool agreed = false;
  const QString reason = QInputDialog::getText(
      this, tr("Slip of the keyboard"), tr("What was wrong? The run keeps both values and this reason."),
      QLineEdit::Normal, {}, &agreed);
  const Edit edit = m_edit;
  const bool isLastEdit = m_document->undoStack().index() == edit.undoIndex;
  if (!agreed || reason.trimmed().isEmpty() || !isLastEdit || !m_document->undo()) {
    return;
  }
  m_edit = {};
  m_run = edit.from;
  correctSlip(*m_document, edit.from, edit.key, edit.value, reason.trimmed());
  showSlip();
  refresh();
}

}  // namespace fettle::ui
