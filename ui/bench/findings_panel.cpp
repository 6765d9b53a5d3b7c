#include "ui/bench/findings_panel.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "core/steps/catalogue.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {
namespace {

QString glyphOf(Severity severity) {
  return severity == Severity::fault     ? QStringLiteral("✕")
         : severity == Severity::caution ? QStringLiteral("!")
                                         : QStringLiteral("i");
}

QString wordOf(Severity severity) {
  return severity == Severity::fault     ? FindingsPanel::tr("Fault")
         : severity == Severity::caution ? FindingsPanel::tr("Caution")
                                         : FindingsPanel::tr("Note");
}

}  // namespace

FindingsPanel::FindingsPanel(const Palette& palette, QWidget* parent) : QFrame(parent), m_palette(palette) {
  setObjectName("findingsPanel");
  setAccessibleName(tr("Findings"));
  setStyleSheet(
      QStringLiteral("#findingsPanel { background: %1; border: 1px solid %2; border-radius: 3px; }")
          .arg(palette.panel.name(), palette.line.name()));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(1, 1, 1, 1);
  column->setSpacing(0);
  m_title = new SmallLabel(tr("FINDINGS"));
  m_title->setContentsMargins(10, 6, 10, 6);
  column->addWidget(m_title);
  auto* scroll = new QScrollArea;
  scroll->setAccessibleName(tr("Findings"));
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setFocusPolicy(Qt::NoFocus);  // its buttons take the keys
  scroll->setWidgetResizable(true);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  auto* body = new QWidget;
  body->setAutoFillBackground(false);
  scroll->setStyleSheet("QScrollArea, QScrollArea > QWidget > QWidget { background: transparent; }");
  m_column = new QVBoxLayout(body);
  m_column->setContentsMargins(0, 0, 0, 0);
  m_column->addStretch(1);
  scroll->setWidget(body);
  column->addWidget(scroll, 1);
}

int FindingsPanel::heightFor(int width) const {
  constexpr int around = 4;  // border and margin, twice
  const int inside = width - around;
  int content = 0;
  if (m_content) {
    content =
        m_content->hasHeightForWidth() ? m_content->heightForWidth(inside) : m_content->sizeHint().height();
  }
  const int lines = static_cast<int>(m_shown.size());  // one above every finding
  return m_title->sizeHint().height() + content + lines + around;
}

QPushButton* FindingsPanel::wayTo(const Step& step) {
  const QString name = QString::fromStdString(step.name);
  auto* way = new QPushButton(tr("%1 ›").arg(name));
  way->setObjectName("wayTo_" + QString::fromStdString(step.key));
  way->setAccessibleName(tr("Go to %1").arg(name));
  way->setFlat(true);
  connect(way, &QPushButton::clicked, this,
          [this, key = QString::fromStdString(step.key)] { emit stepWanted(key); });
  return way;
}

void FindingsPanel::show(const std::vector<Finding>& findings, bool isComplete) {
  if (m_content && findings == m_shown && isComplete == m_isComplete) {
    return;
  }
  m_isComplete = isComplete;
  m_shown = findings;
  if (m_content) {  // a button in it may be what brought us here
    m_content->hide();
    m_content->deleteLater();
  }
  m_content = new QWidget;
  auto* rows = new QVBoxLayout(m_content);
  rows->setContentsMargins(0, 0, 0, 0);
  rows->setSpacing(0);
  std::vector<Finding> sorted = findings;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
  for (const auto& finding : sorted) {
    const QColor& colour = finding.severity == Severity::fault     ? m_palette.fault
                           : finding.severity == Severity::caution ? m_palette.caution
                                                                   : m_palette.accent;
    auto* row = new QFrame;
    row->setObjectName("finding_" + QString::fromStdString(finding.code));
    row->setStyleSheet(QStringLiteral("QFrame { border-top: 1px solid %1; } QLabel { border: none; }")
                           .arg(m_palette.line.name()));
    auto* line = new QHBoxLayout(row);
    line->setContentsMargins(10, 6, 10, 6);
    auto* glyph = new QLabel(
        QStringLiteral("<b style='color:%1'>%2</b>").arg(colour.name(), glyphOf(finding.severity)));
    glyph->setToolTip(wordOf(finding.severity));
    glyph->setAccessibleName(wordOf(finding.severity));
    glyph->setFixedWidth(14);
    auto* words = new QLabel(QString::fromStdString(finding.text));
    words->setTextFormat(Qt::PlainText);
    words->setWordWrap(true);
    words->setTextInteractionFlags(Qt::TextSelectableByMouse);
    line->addWidget(glyph, 0, Qt::AlignTop);
    line->addWidget(words, 1);
    if (const Step* see = findStep(finding.see)) {
      line->addWidget(wayTo(*see), 0, Qt::AlignTop);
    }
    rows->addWidget(row);
  }
  if (findings.empty()) {
    auto* none = new SmallLabel(isComplete ? tr("Nothing was noticed.")
                                           : tr("Findings appear here while you enter readings."));
    none->setContentsMargins(10, 4, 10, 8);
    rows->addWidget(none);
  }
  m_column->insertWidget(0, m_content);
}

}  // namespace fettle::ui
