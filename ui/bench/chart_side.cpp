#include "ui/bench/chart_side.h"

#include <QSplitter>
#include <QVBoxLayout>

namespace fettle::ui {

ChartSide::ChartSide(const Palette& palette, QWidget* parent) : QWidget(parent) {
  setObjectName("chartSide");
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(12, 8, 12, 12);
  auto* splitter = new QSplitter(Qt::Vertical);
  splitter->setObjectName("chartSplitter");
  splitter->setChildrenCollapsible(false);
  splitter->setHandleWidth(9);
  splitter->setStyleSheet("QSplitter::handle { background: transparent; }");
  m_charts = new ChartPane;
  m_charts->setPalette(palette);
  m_findings = new FindingsPanel(palette);
  splitter->addWidget(m_charts);
  splitter->addWidget(m_findings);
  splitter->setStretchFactor(0, 4);
  splitter->setStretchFactor(1, 1);
  splitter->setSizes({500, 170});
  column->addWidget(splitter);
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
        if (chart.id == before.id && chart.kind == ChartKind::heightMap) {
          if (auto difference =
                  differenceOf(chart, before,
                               tr("Change of %1").arg(QString::fromStdString(chart.title)).toStdString())) {
            charts.push_back(std::move(*difference));
          }
        }
      }
    }
  }
  m_charts->setCharts(charts);
}

void ChartSide::showFindings(const Evaluated* evaluated) {
  const bool complete = evaluated && evaluated->problem.empty() && evaluated->result.complete;
  m_findings->show(evaluated ? evaluated->result.findings : std::vector<Finding>{}, complete);
}

}  // namespace fettle::ui
