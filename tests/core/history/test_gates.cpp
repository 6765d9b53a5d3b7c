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
  evaluated.result.find(code, severity, "the sentence");
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
    QVERIFY(closedGate(history, *findStep("power-up"), 2)->find("the sentence") != std::string::npos);
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

  // Outside a history only accepted results are known.
  void acceptedResultsOpenAndCloseThem() {
    const Step& powerUp = *findStep("power-up");
    const Step& probe = *findStep("probe-position");
    using Accepted = std::map<std::string, SettingValues>;
    const auto with = [](const char* step, const char* id, double count) {
      return Accepted{{step, {{id, {count, {}}}}}};
    };
    QVERIFY(closedGate(Accepted{}, powerUp));
    QVERIFY(closedGate(with("safety", "critical_open", 2), powerUp)->find("2") != std::string::npos);
    QVERIFY(!closedGate(with("safety", "critical_open", 0), powerUp));
    QVERIFY(!closedGate(Accepted{}, probe));
    QVERIFY(closedGate(with("power-up", "faults", 1), probe));
    QVERIFY(!closedGate(with("power-up", "faults", 0), probe));
    QVERIFY(!closedGate(with("power-up", "faults", 1), *findStep("mechanics")));
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
};

FETTLE_TEST(TestGates)
#include "test_gates.moc"
