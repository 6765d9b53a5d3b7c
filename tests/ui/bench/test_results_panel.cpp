#include <QLabel>
#include <QPushButton>
#include <QTest>

#include "tests/support/test_main.h"
#include "ui/bench/results_panel.h"
#include "ui/theme/palette.h"

using namespace fettle;
using namespace fettle::ui;

namespace {

Step stepWithASetting() {
  Step step;
  step.key = "travel";
  step.results = {{"steps_per_mm", "1/mm", "Steps per mm"}};
  step.settings = {{"steps_per_mm", "Steps per mm", "1/mm"}};
  return step;
}

/// Measured 79.992 ± 0.014, proposed as given.
Evaluated proposing(double steps) {
  Evaluated evaluated;
  Quantity measured = plainQuantity(79.992, "1/mm");
  measured.u = 0.007;
  measured.dof = 1e9;  // U = 1.96 u = 0.0137
  evaluated.result.complete = true;
  evaluated.result.give(ResultId{"steps_per_mm", "1/mm", {}}, measured);
  Quantity proposed = steps == measured.value ? measured : plainQuantity(steps, "1/mm");
  evaluated.result.propose(SettingId{"steps_per_mm", "1/mm", {}}, proposed);
  return evaluated;
}

QStringList shownBy(const ResultsPanel& panel) {
  QStringList words;
  for (const auto* label : panel.findChildren<QLabel*>()) {
    words << label->text().remove(QChar(0x2060)).replace(QChar(0x00a0), ' ');
  }
  return words;
}

}  // namespace

class TestResultsPanel : public QObject {
  Q_OBJECT
 private slots:
  void whatIsAdoptedStandsBesideAdopt_data() {
    QTest::addColumn<double>("proposed");
    QTest::addColumn<QStringList>("shown");
    QTest::newRow("the measured value")
        << 79.992 << QStringList{"Steps per mm", "79.992 ± 0.014 steps/mm", "as found: not known"};
    QTest::newRow("another one preferred")
        << 80.0
        << QStringList{"Steps per mm", "80 steps/mm", "as found: not known", "Steps per mm, measured",
                       "79.992 ± 0.014 steps/mm"};
  }
  void whatIsAdoptedStandsBesideAdopt() {
    QFETCH(double, proposed);
    QFETCH(QStringList, shown);
    const Step step = stepWithASetting();
    StepRun run;
    run.step = step.key;
    run.inputs = {{"a", 1}};
    const Evaluated evaluated = proposing(proposed);
    ResultsPanel panel(Palette::light());
    double adopted = 0;
    connect(&panel, &ResultsPanel::adoptWanted, &panel,
            [&](const SettingProposal& proposal) { adopted = *proposal.proposed.number; });
    panel.show(step, &run, &evaluated, true);
    QCOMPARE(shownBy(panel), shown);
    panel.findChild<QPushButton*>("adopt_steps_per_mm")->click();
    QCOMPARE(adopted, proposed);
  }
};

FETTLE_TEST(TestResultsPanel)
#include "test_results_panel.moc"
