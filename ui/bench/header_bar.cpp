#include "ui/bench/header_bar.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "core/history/state.h"
#include "core/steps/catalogue.h"
#include "ui/bench/day.h"
#include "ui/forms/small_label.h"
#include "ui/theme/look.h"

namespace fettle::ui {
namespace {

QString wordOf(const Json& sheet, const char* key) {
  const auto found = sheet.find(key);
  return found != sheet.end() && found->is_string() ? QString::fromStdString(found->get<std::string>())
                                                    : QString();
}

QString orDash(const QString& text) {
  return text.isEmpty() ? QStringLiteral("–") : text;
}

QString durationOf(double seconds) {
  const int minutes = static_cast<int>(seconds / 60);
  return minutes < 60 ? HeaderBar::tr("%1 min").arg(minutes)
                      : HeaderBar::tr("%1 h %2 min").arg(minutes / 60).arg(minutes % 60);
}

}  // namespace

QPushButton* HeaderBar::addPart(const QString& caption, const QString& name) {
  auto* part = new QWidget;
  auto* column = new QVBoxLayout(part);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  auto* label = new SmallLabel(caption);
  auto* value = new QPushButton;
  value->setObjectName(name);
  value->setAccessibleName(caption);
  value->setStyleSheet(
      QStringLiteral("QPushButton { border: none; padding: 0; text-align: left; background: "
                     "transparent; color: %1; } QPushButton:focus, QPushButton:hover { color: %2; }")
          .arg(m_palette.text.name(), m_palette.accent.name()));
  column->addWidget(label);
  column->addWidget(value);
  layout()->addWidget(part);
  return value;
}

HeaderBar::HeaderBar(const Palette& palette, QWidget* parent) : QWidget(parent), m_palette(palette) {
  setObjectName("headerBar");
  setAutoFillBackground(true);
  QPalette colours = this->palette();
  colours.setColor(QPalette::Window, palette.panel);
  setPalette(colours);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(18, 6, 18, 6);
  row->setSpacing(24);
  m_machine = addPart(tr("machine"), "machineButton");
  m_machine->setStyleSheet(m_machine->styleSheet() + " QPushButton { font-weight: 600; }");
  m_session = addPart(tr("session"), "sessionButton");
  m_operator = addPart(tr("operator"), "operatorButton");
  m_filament = addPart(tr("filament"), "filamentButton");
  row->addStretch(1);
  m_time = addPart(tr("at the bench"), "timeButton");
  m_done = addPart(tr("accepted"), "doneButton");
  auto* report = new QPushButton(tr("Report…"));
  report->setObjectName("reportButton");
  row->addWidget(report, 0, Qt::AlignVCenter);
  connect(report, &QPushButton::clicked, this, &HeaderBar::reportWanted);
  connect(m_machine, &QPushButton::clicked, this, &HeaderBar::machineWanted);
  for (auto* button : {m_session, m_operator, m_filament}) {
    connect(button, &QPushButton::clicked, this, &HeaderBar::sessionWanted);
  }
  for (auto* button : {m_time, m_done}) {
    button->setFocusPolicy(Qt::NoFocus);
  }
}

void HeaderBar::show(const Document& document) {
  const History& history = document.history();
  const Json& sheet = history.machine.sheet;
  const QString location = wordOf(sheet, "location");
  m_machine->setText(orDash(wordOf(sheet, "name")) + (location.isEmpty() ? "" : " · " + location));
  const Session* session = history.session(document.session());
  if (session) {
    const auto number = std::count_if(history.sessions.begin(), history.sessions.end(),
                                      [&](const Session& other) { return other.id <= session->id; });
    const QString reason = QString::fromStdString(session->reason);
    m_session->setText(tr("%1 · %2").arg(number).arg(dayInWords(session->date)) +
                       (reason.isEmpty() ? "" : ", " + reason));
    m_operator->setText(orDash(QString::fromStdString(session->person)));
    m_filament->setText(orDash(QString::fromStdString(session->filament)));
    m_time->setText(durationOf(session->benchSeconds));
  } else {
    m_session->setText(tr("none, start one"));
    m_operator->setText("–");
    m_filament->setText("–");
    m_time->setText("–");
  }
  int accepted = 0;
  int due = 0;
  for (const auto& step : catalogue()) {
    const StepState state = standingOf(history, step, document.session()).state;
    accepted += state == StepState::accepted || state == StepState::notAffected ? 1 : 0;
    due += state == StepState::due ? 1 : 0;
  }
  m_done->setText(tr("%1 of %2").arg(accepted).arg(catalogue().size()) +
                  (due > 0 ? tr(", %1 due").arg(due) : ""));
}

}  // namespace fettle::ui
