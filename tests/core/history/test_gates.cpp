#include <QTest>

#include "core/history/gates.h"
#include "core/steps/catalogue.h"
#include "tests/support/test_main.h"

using namespace fettle;

namespace {

/// One run of a step in session 2, with what its evaluation gave.
void addRun(History& history, RecordId id, const char* step, const Evaluated& evaluated) {
  StepRun run;
  run.id = id;
  run.session = 2;
  run.step = step;
  run.inputs = {{"entered", true}};
  history.runs.push_back(run);
  history.evaluated[id] = evaluated;
}

Evaluated with(const char* code, Severity severity) {
  Evaluated evaluated;
  evaluated.result.addFinding(code, severity, "the sentence");
  return evaluated;
}

Evaluated refused() {
  Evaluated evaluated;
  evaluated.problem = "Earth bond, row 1: -3 is refused.";
  return evaluated;
}

bool isClosed(const History& history, const char* step) {
  return closedGate(history, *findStep(step), 2).has_value();
}

}  // namespace

/// The gates of the methods handbook, "Common rules".
class TestGates : public QObject {
  Q_OBJECT

 private slots:
  void powerUpWaitsForTheCriticalItems() {
    History history;
    QVERIFY(isClosed(history, "power-up"));  // nobody answered them
    addRun(history, 4, "safety", with("critical-open", Severity::fault));
    QVERIFY(closedGate(history, *findStep("power-up"), 2)->sentence.find("The sentence") !=
            std::string::npos);
    addRun(history, 5, "safety", with("heater-off-rating", Severity::fault));
    QVERIFY(!isClosed(history, "power-up"));
  }

  void heatAndMotionWaitForPowerUp() {
    History history;
    QVERIFY(!isClosed(history, "probe-position"));
    addRun(history, 4, "power-up", with("device-wrong", Severity::fault));
    QVERIFY(isClosed(history, "probe-position") && isClosed(history, "melt-rate"));
    QVERIFY(!isClosed(history, "safety"));  // neither heats nor moves
    addRun(history, 5, "power-up", with("not-tried", Severity::caution));
    QVERIFY(!isClosed(history, "probe-position"));
  }

  void aFaultOfPowerUpDoesNotBlockItself() {
    History history;
    addRun(history, 4, "safety", {});
    addRun(history, 5, "power-up", with("device-wrong", Severity::fault));
    QVERIFY(!isClosed(history, "power-up"));
  }

  void refusedEntriesKeepTheGateClosed() {
    History history;
    addRun(history, 4, "safety", refused());
    addRun(history, 5, "power-up", refused());
    QVERIFY(isClosed(history, "power-up"));
    QVERIFY(isClosed(history, "probe-position"));
  }

  /// Where only accepted results are known: methods handbook, "Gates", read with the results of the steps.
  void acceptedResultsAloneTellTheGates() {
    const auto gate = [](const char* step, const std::map<std::string, SettingValues>& accepted) {
      StepContext context;
      context.accepted = accepted;
      return closedGate(context, *findStep(step));
    };
    QVERIFY(gate("power-up", {}));  // nobody answered the critical items
    QCOMPARE(gate("power-up", {{"safety", {{"critical_open", {2.0, {}}}}}})->waitsFor,
             std::string("safety"));
    QCOMPARE(gate("power-up", {{"safety", {{"critical_open", {2.0, {}}}}}})->sentence,
             std::string("Blocked by Safety and wiring: critical items still open: 2."));
    QVERIFY(!gate("power-up", {{"safety", {{"critical_open", {0.0, {}}}}}}));
    QVERIFY(!gate("melt-rate", {}));
    QCOMPARE(gate("melt-rate", {{"power-up", {{"faults", {1.0, {}}}}}})->waitsFor, std::string("power-up"));
    QVERIFY(!gate("melt-rate", {{"power-up", {{"faults", {0.0, {}}}}}}));
    QVERIFY(!gate("safety", {{"power-up", {{"faults", {1.0, {}}}}}}));  // neither heats nor moves
  }
};

FETTLE_TEST(TestGates)
#include "test_gates.moc"
