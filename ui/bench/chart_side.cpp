#include "ui/bench/chart_side.h"

#include <QEvent>
#include <QVBoxLayout>
#include <algorithm>

namespace fettle::ui {

ChartSide::ChartSide(const Palette& palette, QWidget* parent) : QWidget(parent) {
  setObjectName("chartSide");
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(12, 8, 12, 12);
  column->setSpacing(9);
  m_charts = new ChartPane;
  m_charts->setPalette(palette);
  m_findings = new FindingsPanel(palette);
  column->addWidget(m_charts, 1);
  column->addWidget(m_findings);
  connect(m_findings, &FindingsPanel::stepWanted, this, &ChartSide::stepWanted);
}

void ChartSide::showCharts(const Step& step, const Evaluated* evaluated, const StepResult* earlier) {
  std::vector<Chart> charts = evaluated ? evaluated->result.charts : std::vector<Chart>{};
  if (charts.empty()) {
    charts = step.emptyCharts;
  }
  if (earlier) {
    for (const auto& chart : std::vector<Chart>(charts)) {
      for (const auto& before : earlier->charts) {
        if (chart.view == before.view && chart.about == before.about &&
            chart.kind == ChartKind::heightMap) {
          if (auto difference = differenceOf(
                  chart, before, tr("%1, change").arg(QString::fromStdString(chart.title)).toStdString())) {
            charts.push_back(std::move(*difference));
          }
        }
      }
    }
  }
  m_charts->setCharts(charts);
}

void ChartSide::showFindings(const Evaluated* evaluated) {
  const bool complete = evaluated && evaluated->complete();
  m_findings->show(evaluated ? evaluated->result.findings : std::vector<Finding>{}, complete);
  fitFindings();
}

void ChartSide::fitFindings() {
  constexpr double mostShare = 0.4;  // many findings scroll: the chart stays
  const QMargins around = layout()->contentsMargins();
  const int wanted = m_findings->heightFor(width() - around.left() - around.right());
  m_findings->setFixedHeight(std::min(wanted, static_cast<int>(mostShare * height())));
}

void ChartSide::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  fitFindings();
}

void ChartSide::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) {
    fitFindings();
  }
}

}  // namespace fettle::ui
