#include "ui/charts/chart_pane.h"

#include <QSignalBlocker>
#include <QTabBar>
#include <QVBoxLayout>

#include "ui/charts/chart_view.h"

namespace fettle::ui {
namespace {

QString idOf(const Chart& chart) {
  return QString::fromStdString(chart.about.empty() ? chart.view : chart.view + "/" + chart.about);
}

}  // namespace

ChartPane::ChartPane(QWidget* parent)
    : QWidget(parent), m_tabs(new QTabBar(this)), m_view(new ChartView(this)) {
  m_tabs->setObjectName(QStringLiteral("chartTabBar"));
  m_tabs->setAccessibleName(tr("Charts of this step"));
  m_tabs->setDrawBase(false);
  m_tabs->setExpanding(false);
  m_tabs->setUsesScrollButtons(true);
  auto* const layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(2);
  layout->addWidget(m_tabs);
  layout->addWidget(m_view, 1);
  connect(m_tabs, &QTabBar::currentChanged, this, [this](int index) {
    remember(index);
    showChart(index);
  });
}

void ChartPane::setCharts(const std::vector<Chart>& charts) {
  m_charts = charts;
  setTabs();
  int best = 0;
  qsizetype rank = m_chosen.size();
  for (std::size_t i = 0; i < m_charts.size(); ++i) {
    const qsizetype here = m_chosen.indexOf(idOf(m_charts[i]));
    if (here >= 0 && here < rank) {
      best = static_cast<int>(i);
      rank = here;
    }
  }
  const QSignalBlocker blocker(m_tabs);
  m_tabs->setCurrentIndex(best);
  showChart(best);
}

void ChartPane::setTabs() {
  const QSignalBlocker blocker(m_tabs);
  const auto count = static_cast<int>(m_charts.size());
  while (m_tabs->count() > count) {
    m_tabs->removeTab(m_tabs->count() - 1);
  }
  for (int i = 0; i < count; ++i) {
    const QString title = QString::fromStdString(m_charts[static_cast<std::size_t>(i)].title);
    if (i == m_tabs->count()) {
      m_tabs->addTab(title);
    } else if (m_tabs->tabText(i) != title) {
      m_tabs->setTabText(i, title);
    }
  }
  m_tabs->updateGeometry();  // while hidden the tab bar does not tell the layout itself
}

void ChartPane::showChart(int index) {
  if (index >= 0 && static_cast<std::size_t>(index) < m_charts.size()) {
    m_view->setChart(m_charts[static_cast<std::size_t>(index)]);
  } else {
    m_view->setChart({});
  }
}

void ChartPane::remember(int index) {
  if (index >= 0 && static_cast<std::size_t>(index) < m_charts.size()) {
    const QString id = idOf(m_charts[static_cast<std::size_t>(index)]);
    m_chosen.removeAll(id);
    m_chosen.prepend(id);
  }
}

void ChartPane::choose(const QString& id) {
  for (std::size_t i = 0; i < m_charts.size(); ++i) {
    if (idOf(m_charts[i]) == id) {
      m_tabs->setCurrentIndex(static_cast<int>(i));
      remember(static_cast<int>(i));
      return;
    }
  }
}

QString ChartPane::chosen() const {
  const int index = m_tabs->currentIndex();
  return index >= 0 && static_cast<std::size_t>(index) < m_charts.size()
             ? idOf(m_charts[static_cast<std::size_t>(index)])
             : QString();
}

void ChartPane::setPalette(const Palette& palette) {
  m_view->setPalette(palette);
}

}  // namespace fettle::ui
