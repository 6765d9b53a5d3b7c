#include "ui/bench/step_page.h"
#include "ui/editing/run_verbs.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollBar>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "core/steps/contract/wording.h"
#include "ui/bench/section_title.h"
#include "ui/forms/any_editor.h"
#include "ui/forms/drop_down.h"
#include "ui/forms/entry_order.h"
#include "ui/forms/follow_focus.h"
#include "ui/forms/small_label.h"
#include "ui/theme/look.h"
#include "ui/theme/type_label.h"

namespace fettle::ui {

StepPage::StepPage(const Palette& palette, QWidget* parent) : QScrollArea(parent), m_palette(palette) {
  setObjectName("stepPage");
  setAccessibleName(tr("Step"));
  setFrameShape(QFrame::NoFrame);
  setWidgetResizable(true);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  auto* body = new QWidget;
  body->setMinimumWidth(1);  // the column decides the width; what is too wide scrolls or wraps inside
  auto* column = new QVBoxLayout(body);
  column->setContentsMargins(18, 14, 18, 14);
  column->setSpacing(9);
  buildHead(*column);
  buildEntry(*column);
  buildResults(*column);
  buildFoot();
  setWidget(body);
  m_follow = new FollowFocus(this);
}

void StepPage::buildHead(QVBoxLayout& column) {
  m_title = new TypeLabel(&Fonts::stepTitle);
  m_title->setObjectName("stepTitle");
  m_purpose = new QLabel;
  m_purpose->setWordWrap(true);
  QPalette dim = m_purpose->palette();
  dim.setColor(QPalette::WindowText, m_palette.dim);
  m_purpose->setPalette(dim);
  m_caution = new QLabel;
  m_caution->setObjectName("cautionLabel");
  m_caution->setWordWrap(true);
  m_caution->setStyleSheet(
      QStringLiteral("QLabel { background: %1; color: %2; border-radius: 3px; padding: 6px 9px; }")
          .arg(m_palette.cautionGround.name(), m_palette.caution.name()));
  m_standing = new QLabel;
  m_standing->setObjectName("standingLabel");
  m_standing->setWordWrap(true);
  m_decide = new QPushButton;
  m_decide->setObjectName("decideButton");
  connect(m_decide, &QPushButton::clicked, this, &StepPage::decide);
  auto* title = new QVBoxLayout;
  title->setSpacing(0);
  title->addWidget(m_title);
  title->addWidget(m_purpose);
  column.addLayout(title);
  column.addWidget(m_caution);
  auto* standing = new QHBoxLayout;
  standing->addWidget(m_standing, 1);
  standing->addWidget(m_decide, 0, Qt::AlignTop);
  column.addLayout(standing);
}

void StepPage::buildEntry(QVBoxLayout& column) {
  auto* head = new QHBoxLayout;
  m_entryTitle = new SectionTitle(tr("Enter"));
  m_runs = new DropDown;
  m_runs->setObjectName("runBox");
  m_runs->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  m_runs->setAccessibleName(tr("Run"));
  m_newRun = new QPushButton(tr("New run"));
  m_newRun->setObjectName("newRunButton");
  m_helpButton = new QPushButton(tr("What to do: F1"));
  m_helpButton->setObjectName("helpButton");
  m_helpButton->setFlat(true);
  head->addWidget(m_entryTitle);
  head->addWidget(m_runs);
  head->addWidget(m_newRun);
  head->addStretch(1);
  head->addWidget(m_helpButton);
  column.addLayout(head);

  m_slipText = new QLabel;
  m_slipText->setObjectName("slipLabel");
  m_slipText->setWordWrap(true);
  m_slip = new QPushButton;
  m_slip->setObjectName("slipButton");
  connect(m_slip, &QPushButton::clicked, this, &StepPage::askSlip);
  auto* slip = new QHBoxLayout;
  slip->addWidget(m_slipText, 1);
  slip->addWidget(m_slip, 0, Qt::AlignTop);
  column.addLayout(slip);
  showSlip();

  m_form = new InputForm(&makeAnyEditor);
  column.addWidget(m_form);
  auto* working = new QHBoxLayout;
  m_progress = new QProgressBar;
  m_progress->setRange(0, 100);
  m_progress->setAccessibleName(tr("Evaluating"));
  m_cancel = new QPushButton(tr("Cancel"));
  working->addWidget(m_progress, 1);
  working->addWidget(m_cancel);
  m_progress->hide();
  m_cancel->hide();
  column.addLayout(working);

  connect(m_helpButton, &QPushButton::clicked, this, &StepPage::helpWanted);
  connect(m_runs, &QComboBox::activated, this,
          [this](int index) { chooseRun(m_runs->itemData(index).toLongLong()); });
  connect(m_newRun, &QPushButton::clicked, this, &StepPage::startRun);
  connect(m_form, &InputForm::edited, this,
          [this](const QString& key, const Json& value, const QString& what) {
            m_edit = {0, 0, key.toStdString(), value};
            m_document->setInput(m_step->key, m_run, key.toStdString(), value, what);
            m_edit.undoIndex = m_document->undoStack().index();
            followNewRun();
            showSlip();
          });
  connect(m_form, &InputForm::fileChosen, this, &StepPage::fileChosen);
  connect(m_form, &InputForm::tableFileChosen, this, &StepPage::tableFileChosen);
}

void StepPage::buildResults(QVBoxLayout& column) {
  column.addWidget(new SectionTitle(tr("Results")));
  m_results = new ResultsPanel(m_palette);
  column.addWidget(m_results);
  column.addWidget(new SectionTitle(tr("Notes")));
  m_notes = new NotesEditor;
  m_notes->setMinimumHeight(72);
  column.addWidget(m_notes, 1);

  connect(m_results, &ResultsPanel::adoptWanted, this,
          [this](const SettingProposal& proposal) { adopt(*m_document, m_run, proposal); });
  connect(m_results, &ResultsPanel::takeBackWanted, this,
          [this](const QString& setting) { withdrawAdoption(*m_document, m_run, setting.toStdString()); });
  connect(m_notes, &NotesEditor::committed, this, [this](const QString& text) {
    m_document->setNotes(m_step->key, m_run, text);
    followNewRun();
  });
}

void StepPage::setDocument(Document* document, Evaluator* evaluator) {
  m_document = document;
  m_evaluator = evaluator;
  m_run = 0;
  if (!document) {
    return;
  }
  connect(document, &Document::changed, &m_refresh, &OncePerTurn::ask);
  connect(document, &Document::resultHeld, &m_refresh, &OncePerTurn::ask);
  connect(document, &Document::runBegun, this, &StepPage::followBegunRun);
  connect(document, &Document::sessionShown, this, [this] {
    m_run = 0;
    refresh();
  });
  connect(evaluator, &Evaluator::progressed, this, [this](RecordId busy, double done) {
    const bool visible = busy == m_run && done >= 0;
    m_progress->setVisible(visible);
    m_cancel->setVisible(visible);
    m_progress->setValue(static_cast<int>(100 * done));
  });
  connect(m_cancel, &QPushButton::clicked, evaluator, &Evaluator::cancel);
}

void StepPage::setStep(const Step* step) {
  if (m_step == step || !step) {
    return;
  }
  if (m_step) {
    commitPending();
    if (m_document) {
      m_document->leaveRun();
    }
  }
  m_edit = {};
  showSlip();
  m_step = step;
  m_run = 0;
  m_title->setText(QString::fromStdString(step->name));
  m_purpose->setText(QString::fromStdString(step->purpose));
  m_caution->setText("⚠ " + QString::fromStdString(step->caution));
  m_caution->setVisible(!step->caution.empty());
  m_form->setFields(step->fields);
  verticalScrollBar()->setValue(0);
  refresh();
}

const StepRun* StepPage::run() const {
  return m_document ? m_document->history().run(m_run) : nullptr;
}

const Evaluated* StepPage::evaluated() const {
  if (!m_document) {
    return nullptr;
  }
  const auto& all = m_document->history().evaluated;
  const auto found = all.find(m_run);
  return found == all.end() ? nullptr : &found->second;
}

bool StepPage::runEditable() const {
  return m_document->editable() && (!run() || run()->session == m_document->session());
}

void StepPage::chooseRun(RecordId run) {
  if (run != m_run) {
    commitPending();
    m_document->leaveRun();
    m_edit = {};
    showSlip();
    m_run = run;
    refresh();
  }
}

void StepPage::followNewRun() {
  const auto& runs = m_document->history().runs;
  if (m_run == 0 && !runs.empty() && runs.back().step == m_step->key) {
    m_run = runs.back().id;
  }
}

void StepPage::startRun() {
  if (!m_document || !m_document->editable()) {
    return;
  }
  commitPending();
  const StepRun* shown = run();
  if (m_document->addRun(m_step->key, shown ? shown->subject : "")) {
    chooseRun(m_document->history().runs.back().id);
    enterReadings();
  }
}

void StepPage::enterReadings() {
  m_form->focusOnFirst();
  m_follow->follow();  // also when it had the focus already
}

void StepPage::toggleAcceptance() {
  if (!m_document) {
    return;
  }
  commitPending();
  refresh();
  const StepRun* shown = run();
  if (shown && m_accept->isEnabled()) {
    shown->accepted() ? withdraw(*m_document, m_run) : accept(*m_document, m_run);
  } else {
    goToWhatIsMissing();
  }
}

void StepPage::goToWhatIsMissing() {
  if (!runEditable()) {
    ensureWidgetVisible(m_standing);  // it says why nothing can be accepted here
    return;
  }
  const Evaluated* result = evaluated();
  if (run() == nullptr || run()->inputs.empty()) {
    enterReadings();
    return;
  }
  const bool isPlaceKnown = result && result->problem.empty() && !result->result.missing.empty();
  if (isPlaceKnown && m_form->focusOn(QString::fromStdString(result->result.missing.front()))) {
    m_follow->follow();
  } else {
    ensureWidgetVisible(m_results);
  }
  m_verdict->setText(tr("Not accepted: something is missing or refused."));
}

void StepPage::commitPending() {
  m_form->commitPending();
  m_notes->commitPending();
}

void StepPage::refresh() {
  if (!m_document || !m_step) {
    return;
  }
  const auto runs = m_document->history().runsOf(m_step->key, m_document->session());
  const bool stillThere =
      std::any_of(runs.begin(), runs.end(), [&](const StepRun* one) { return one->id == m_run; });
  if (!stillThere) {
    const StepRun* earlier = m_document->history().lastAccepted(m_step->key, m_document->session());
    m_run = !runs.empty() ? runs.back()->id : earlier ? earlier->id : 0;
  }
  if (m_run != 0) {
    m_evaluator->bringUpToDate(m_run);
  }
  const StepRun* shown = run();
  m_form->setInstruments(m_document->history().machine.instruments);
  const Session* session = m_document->history().session(m_document->session());
  m_form->setInitials(session ? QString::fromStdString(session->person) : QString());
  m_form->setReadOnly(!runEditable());
  m_form->setValues(shown ? shown->inputs : Json::object());
  m_notes->showText(shown ? QString::fromStdString(shown->notes) : QString());
  m_notes->setReadOnly(!runEditable());
  m_results->show(*m_step, shown, evaluated(), runEditable());
  showRuns();
  showState();
  orderTabs();
  emit runShown();
}

void StepPage::showRuns() {
  const QSignalBlocker quiet(m_runs);
  const auto runs = m_document->history().runsOf(m_step->key, m_document->session());
  m_runs->clear();
  for (std::size_t i = 0; i < runs.size(); ++i) {
    QString text = tr("run %1").arg(i + 1);
    const std::string subject = subjectName(*m_step, runs[i]->inputs, runs[i]->subject);
    text += subject.empty() ? "" : ", " + QString::fromStdString(subject);
    m_runs->addItem(text + (runs[i]->accepted() ? " ✓" : ""), QVariant::fromValue(qlonglong{runs[i]->id}));
    if (runs[i]->id == m_run) {
      m_runs->setCurrentIndex(static_cast<int>(i));
    }
  }
  m_runs->setVisible(!runs.empty());
  m_newRun->setVisible(run() && m_document->editable());
}

void StepPage::walkRuns(int by) {
  const int wanted = m_runs->currentIndex() + by;
  if (wanted >= 0 && wanted < m_runs->count()) {
    chooseRun(m_runs->itemData(wanted).toLongLong());
  }
}

void StepPage::orderTabs() {
  QWidgetList stops{this};
  stops << m_form->entries();
  for (QWidget* part : m_results->findChildren<QWidget*>()) {
    if ((part->focusPolicy() & Qt::TabFocus) != 0) {
      stops << part;
    }
  }
  stops << QWidgetList{m_again, m_accept, m_notes} << m_form->menus()
        << QWidgetList{m_runs, m_newRun, m_decide, m_helpButton};
  ui::orderTabs(stops, m_stops);
}

}  // namespace fettle::ui
