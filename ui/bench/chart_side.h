#pragma once
#include <QWidget>

#include "core/history/history.h"
#include "core/steps/contract/step.h"
#include "ui/bench/findings_panel.h"
#include "ui/charts/chart_pane.h"

namespace fettle::ui {

/// The right column: live charts above, findings under them.
class ChartSide : public QWidget {
  Q_OBJECT
 public:
  explicit ChartSide(const Palette& palette, QWidget* parent = nullptr);
  /// Shows a run's charts; `earlier` is the last result before it, for the difference of maps.
  void showCharts(const Step& step, const Evaluated* evaluated, const StepResult* earlier);
  void showFindings(const Evaluated* evaluated);
  ChartPane& charts() { return *m_charts; }

 signals:
  void stepWanted(const QString& step);

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  /// The findings take what they need, the chart the rest.
  void fitFindings();

  ChartPane* m_charts;
  FindingsPanel* m_findings;
};

}  // namespace fettle::ui
