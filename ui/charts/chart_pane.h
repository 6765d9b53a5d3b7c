#pragma once
#include <QStringList>
#include <QWidget>
#include <vector>

#include "core/steps/contract/chart.h"
#include "ui/theme/palette.h"

class QTabBar;

namespace fettle::ui {

class ChartView;

/// Several charts behind plain text tabs. The tab the user chose last is shown again whenever a chart of
/// its id is there.
class ChartPane : public QWidget {
  Q_OBJECT

 public:
  explicit ChartPane(QWidget* parent = nullptr);

  void setCharts(const std::vector<Chart>& charts);

  using QWidget::setPalette;
  void setPalette(const Palette& palette);

  /// Shows the chart of an id, when there is one, as if the user had chosen its tab.
  void choose(const QString& id);
  QString chosen() const;

  ChartView* view() const { return m_view; }

 private:
  void setTabs();
  void showChart(int index);
  void remember(int index);

  QTabBar* m_tabs;
  ChartView* m_view;
  std::vector<Chart> m_charts;
  QStringList m_chosen;  ///< ids, the latest first
};

}  // namespace fettle::ui
