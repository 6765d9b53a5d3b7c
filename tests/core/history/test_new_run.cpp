#include <QTest>

#include "core/history/evaluation.h"
#include "core/history/new_run.h"
#include "core/history/settings_in_force.h"
#include "tests/support/test_main.h"

using namespace fettle;

namespace {

StepRun runOf(RecordId id, const char* step, const char* subject = "") {
  StepRun run;
  run.id = id;
  run.session = 2;
  run.step = step;
  run.subject = subject;
  run.inputs = {{"margin", 5}};
  return run;
}

Adoption adopted(const char* setting, double value) {
  return {setting, {value, {}}, "mm", {}, {}, "2026-01-01T10:00:00"};
}

/// Delivered with an offset of −20 mm; one run of probe-position.
History oneRun() {
  History history;
  history.machine.asFound["probe_offset_x"] = {{-20.0, {}}, "2026-01-01T08:00:00", "typed"};
  history.sessions = {{2, "2026-01-01T09:00:00", "A", "", "", {}, 0}};
  history.runs = {runOf(3, "probe-position")};
  return history;
}

}  // namespace

/// What a run begins with. Rules: new_run.h; values are made up here.
class TestNewRun : public QObject {
  Q_OBJECT

 private slots:
  void theFirstRunIsOfArrival() {
    QCOMPARE(roleOfNewRun({}, "probe-position", ""), RunRole::arrival);
    const History history = oneRun();
    QCOMPARE(roleOfNewRun(history, "bed-shape", ""), RunRole::arrival);
    QCOMPARE(roleOfNewRun(history, "probe-position", "other"), RunRole::arrival);
  }

  void nothingChangedIsARepeat() {
    History history = oneRun();
    QCOMPARE(roleOfNewRun(history, "probe-position", ""), RunRole::repeat);
    history.changes = {{2, "2026-01-01T08:00:00", "nozzle", ""}};  // before the run
    QCOMPARE(roleOfNewRun(history, "probe-position", ""), RunRole::repeat);
    history.changes = {{4, "2026-01-02T08:00:00", "cooling", ""}};  // no matter of this step
    QCOMPARE(roleOfNewRun(history, "probe-position", ""), RunRole::repeat);
    history.runs.push_back(runOf(5, "melt-rate"));
    history.runs.back().adopted = {adopted("flow_limit", 12)};
    QCOMPARE(roleOfNewRun(history, "probe-position", ""), RunRole::repeat);
  }

  void aSettingOrAPartOfTheStepMakesACorrectedRun() {
    History history = oneRun();
    history.runs[0].adopted = {adopted("probe_offset_x", -23)};
    QCOMPARE(roleOfNewRun(history, "probe-position", ""), RunRole::corrected);
    history.runs[0].adopted.clear();
    history.changes = {{4, "2026-01-02T08:00:00", "probe", ""}};
    QCOMPARE(roleOfNewRun(history, "probe-position", ""), RunRole::corrected);
  }

  /// Of two runs in a session the second is measured with what the first left.
  void theValuesInForceAreKeptWithTheFirstEntry() {
    History history = oneRun();
    history.runs[0].adopted = {adopted("probe_offset_x", -23), adopted("flow_limit", 12)};
    StepRun second = runOf(4, "probe-position");
    noteMeasuring(history, second, "2026-01-01T11:00:00");
    QCOMPARE(second.measuredOn, std::string("2026-01-01T11:00:00"));
    QCOMPARE(second.inForce.at("probe_offset_x").number, std::optional(-23.0));
    QVERIFY(!second.inForce.contains("flow_limit"));  // no setting of its step
    QCOMPARE(inForceFor(history, history.runs[0]).at("probe_offset_x").number, std::optional(-20.0));
    history.runs[0].adopted[0].value.number = -24;
    noteMeasuring(history, second, "2026-01-01T12:00:00");  // a later entry of the same run
    QCOMPARE(second.measuredOn, std::string("2026-01-01T11:00:00"));
    QCOMPARE(snapshotFor(history, second)["in_force"]["probe_offset_x"].get<double>(), -23.0);
  }
};

FETTLE_TEST(TestNewRun)
#include "test_new_run.moc"
