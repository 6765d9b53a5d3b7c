#include <QTest>

#include "core/history/evaluation.h"
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

using Accepted = std::map<std::string, std::map<std::string, Quantity>>;

bool isClosed(const History& history, const char* step) {
  return closedGate(history, *findStep(step), 2).has_value();
}

}  // namespace

/// Which step waits for which: common practice, no source. Rules: gates.h.
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

  /// As it was signed, whatever was begun or computed since.
  void anAcceptedRunDecidesAlone() {
    History history;
    addRun(history, 4, "safety", {});
    history.runs.back().acceptedOn = "2026-01-01T10:00:00";
    history.runs.back().signedResult = signedForm({});
    QVERIFY(!isClosed(history, "power-up"));
    history.evaluated[4] = with("critical-open", Severity::fault);
    QVERIFY(!isClosed(history, "power-up"));
    addRun(history, 5, "safety", with("critical-open", Severity::fault));
    QVERIFY(!isClosed(history, "power-up"));
    history.runs[0].signedResult = signedForm(with("critical-open", Severity::fault).result);
    QVERIFY(isClosed(history, "power-up"));
  }

  void refusedEntriesKeepTheGateClosed() {
    History history;
    addRun(history, 4, "safety", refused());
    addRun(history, 5, "power-up", refused());
    QVERIFY(isClosed(history, "power-up"));
    QVERIFY(isClosed(history, "probe-position"));
  }

  /// Where only accepted results are known.
  void acceptedResultsAloneTellTheGates() {
    const auto gate = [](const char* step, const Accepted& accepted) {
      StepContext context;
      context.accepted = accepted;
      return closedGate(context, *findStep(step));
    };
    QVERIFY(gate("power-up", {}));  // nobody answered the critical items
    QCOMPARE(gate("power-up", {{"safety", {{"critical_open", plainQuantity(2, "1")}}}})->waitsFor,
             std::string("safety"));
    QCOMPARE(gate("power-up", {{"safety", {{"critical_open", plainQuantity(2, "1")}}}})->sentence,
             std::string("Blocked by Safety and wiring: critical items still open: 2."));
    QVERIFY(!gate("power-up", {{"safety", {{"critical_open", plainQuantity(0, "1")}}}}));
    QVERIFY(!gate("melt-rate", {}));
    QCOMPARE(gate("melt-rate", {{"power-up", {{"faults", plainQuantity(1, "1")}}}})->waitsFor,
             std::string("power-up"));
    QVERIFY(!gate("melt-rate", {{"power-up", {{"faults", plainQuantity(0, "1")}}}}));
    QVERIFY(
        !gate("safety", {{"power-up", {{"faults", plainQuantity(1, "1")}}}}));  // neither heats nor moves
  }
};

FETTLE_TEST(TestGates)
#include "test_gates.moc"
