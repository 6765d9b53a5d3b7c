#include <QLabel>
#include <QTest>

#include "core/steps/catalogue.h"
#include "core/store/machine_file.h"
#include "tests/support/imported_machine.h"
#include "tests/support/test_main.h"
#include "ui/bench/findings_panel.h"
#include "ui/bench/headline.h"
#include "ui/bench/step_list.h"
#include "ui/theme/look.h"

using namespace fettle;
using namespace fettle::ui;

class TestStepList : public QObject {
  Q_OBJECT

 private slots:
  // Of the demo: a resonance of two axes; of checklists what is not in order or open, which is nothing.
  void headlinesTellSomething() {
    const tests::ImportedMachine machine;
    QVERIFY(machine.isMade());
    auto file = MachineFile::open(machine.file().toStdString());
    QVERIFY(file);
    const Document document(std::move(*file));
    const StepListModel model(&document);
    const auto values = [&](const char* step) {
      return model.indexOf(step).data(StepListModel::valueRole).toStringList();
    };
    QCOMPARE(values("mechanics"), (QStringList{"0", "accepted"}));
    QCOMPARE(values("safety"), (QStringList{"0", "accepted"}));
    QCOMPARE(values("config-review"), (QStringList{"1 fault", "accepted"}));
    QCOMPARE(values("resonance"), (QStringList{"45.1, 33.8 Hz", "accepted"}));
    QVERIFY(values("probe-position").front().startsWith("due · −"));
    QVERIFY(values("probe-position").front().endsWith(" mm"));
    QCOMPARE(values("probe-position").back(), QString("due"));
  }

  void countsHaveNoDecimals() {
    Step step;
    step.headline = {"open"};
    StepResult result;
    result.give(ResultId{"open", "1", {}}, 1);
    QCOMPARE(headlineOf(step, result), QString("1"));
  }

  void nothingNoticedIsSaidOfWholeInputsOnly() {
    FindingsPanel panel(Palette::light());
    const auto says = [&](const char* words) {
      const auto labels = panel.findChildren<QLabel*>();
      return std::any_of(labels.begin(), labels.end(), [&](const QLabel* label) {
        return label->isVisibleTo(&panel) && label->text().contains(words);
      });
    };
    panel.show({}, true);
    QVERIFY(says("Nothing was noticed"));
    panel.show({}, false);
    QVERIFY(!says("Nothing was noticed"));
    panel.show({{"check-failed", Severity::fault, "Not in order", ""}}, false);
    QVERIFY(says("Not in order"));
  }
};

FETTLE_TEST(TestStepList)
#include "test_step_list.moc"
