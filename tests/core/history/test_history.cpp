#include <QTest>

#include "core/history/change.h"
#include "core/history/due.h"
#include "core/history/evaluation.h"
#include "core/history/part_groups.h"
#include "core/history/settings_in_force.h"
#include "core/history/state.h"
#include "core/steps/catalogue.h"
#include "tests/support/test_main.h"

using namespace fettle;

namespace {

History twoSessions() {
  History history;
  history.machine.sheet = {{"name", "Test bench"}};
  history.machine.asFound["probe_offset_x"] = {{-20.0, {}}, "2026-01-01T08:00:00", "typed"};
  history.sessions = {{2, "2026-01-01T09:00:00", "A", "", "", {}, 0},
                      {3, "2026-02-01T09:00:00", "A", "", "", {}, 0}};
  StepRun run;
  run.id = 4;
  run.session = 2;
  run.step = "probe-position";
  run.inputs = {{"margin", 5}};
  run.acceptedOn = "2026-01-01T10:00:00";
  run.adopted = {{"probe_offset_x", {-23.4, {}}, "mm", 0.1, 0.2, "2026-01-01T10:00:00"}};
  history.runs = {run};
  return history;
}

}  // namespace

/// Records, their changes, and what follows from them. Rules: the docstrings of core/history; which change
/// makes which step due is common practice, no source. Dates and values are made up here.
class TestHistory : public QObject {
  Q_OBJECT

 private slots:
  void aChangeReversedIsTheOldHistory() {
    History history = twoSessions();
    const StepRun before = history.runs[0];
    StepRun after = before;
    after.notes = "changed";
    const Change change{before, after, "notes"};
    apply(change, history);
    QCOMPARE(history.runs[0].notes, std::string("changed"));
    apply(change.reversed(), history);
    QVERIFY(history.runs[0] == before);
    const Change removal{before, std::nullopt, "remove"};
    apply(removal, history);
    QVERIFY(history.runs.empty());
    apply(removal.reversed(), history);
    QVERIFY(history.runs[0] == before);
  }

  void aChangeThatDoesNotFitIsABug() {
    History history = twoSessions();
    StepRun other = history.runs[0];
    other.notes = "never was";
    QVERIFY_EXCEPTION_THROWN(apply({other, std::nullopt, ""}, history), std::logic_error);
  }

  void whatWasLeftIsFoundInTheNextSession() {
    const History history = twoSessions();
    QCOMPARE(*asFoundFor(history, 2).at("probe_offset_x").number, -20.0);
    QCOMPARE(*asFoundFor(history, 3).at("probe_offset_x").number, -23.4);
  }

  void aChangedPartMakesItsStepsDue() {
    History history = twoSessions();
    QVERIFY(!dueReason(history, "probe-position", 3));
    history.changes = {{5, "2026-01-20T12:00:00", "nozzle", "hardened"}};
    const auto due = dueReason(history, "probe-position", 3);
    QVERIFY(due);
    QVERIFY(due->text.find("2026-01-20") != std::string::npos);
    QVERIFY(due->text.find("hardened") != std::string::npos);
    QVERIFY(dueReason(history, "probe-position", 2));  // a session stands until the next one begins
    QVERIFY(!dueReason(history, "bed-shape", 3));      // never accepted
    const Step& step = *findStep("probe-position");
    QCOMPARE(standingOf(history, step, 3).state, StepState::due);
    history.marks = {
        {6, 3, "probe-position", StepMark::Kind::notAffected, "same length", "2026-02-01T09:30:00"}};
    QCOMPARE(standingOf(history, step, 3).state, StepState::notAffected);
  }

  void aRunBegunTakesNoAcceptanceBack() {
    History history = twoSessions();
    const Step& step = *findStep("probe-position");
    StepRun begun = history.runs[0];
    begun.id = 5;
    begun.acceptedOn.clear();
    begun.adopted.clear();
    history.runs.push_back(begun);
    QCOMPARE(standingOf(history, step, 2).state, StepState::accepted);
    history.evaluated[5].result.complete = true;
    QCOMPARE(standingOf(history, step, 2).state, StepState::accepted);
    QCOMPARE(stateOfRun(history, history.runs[1]), StepState::computed);
    history.runs.erase(history.runs.begin());
    history.evaluated.clear();
    QCOMPARE(standingOf(history, step, 2).state, StepState::incomplete);
  }

  void anOlderChangeOrAnotherPartDoesNot() {
    History history = twoSessions();
    history.changes = {{5, "2025-12-01T12:00:00", "nozzle", ""}, {6, "2026-01-20T12:00:00", "frame", ""}};
    QVERIFY(!dueReason(history, "probe-position", 3));
  }

  void everyGroupNamesStepsOnce() {
    for (const auto& group : partGroups()) {
      auto due = group.due;
      std::sort(due.begin(), due.end());
      QVERIFY2(std::adjacent_find(due.begin(), due.end()) == due.end(), group.key.c_str());
      QVERIFY(!due.empty());
    }
    QCOMPARE(groupOfAdoption("x.shaper_hz")->key, std::string("shaper_adopted"));
    QVERIFY(!groupOfAdoption("probe_offset_x"));
  }

  void aRecordSaysWhenItsValuesAreOld() {
    History history = twoSessions();
    IntakeFiles none([](const Json&) -> tl::expected<std::string, std::string> {
      return tl::unexpected(std::string("none"));
    });
    history.evaluated[4] = evaluateRun(history, history.runs[0], none);
    QVERIFY(isCurrent(history.evaluated[4], history.runs[0]));
    QVERIFY(!usesOlderValues(history.evaluated[4], history, history.runs[0]));
    history.machine.sheet["travel_max_x"] = 300;
    QVERIFY(usesOlderValues(history.evaluated[4], history, history.runs[0]));
    history.machine.sheet.erase("travel_max_x");
    history.machine.sheet["hot_end_power_W"] = 40;  // probe-position does not read it
    history.machine.tolerances["belt-tension.spread"] = {{}, 0.1};
    QVERIFY(!usesOlderValues(history.evaluated[4], history, history.runs[0]));
    StepRun edited = history.runs[0];
    edited.inputs["margin"] = 6;
    QVERIFY(!isCurrent(history.evaluated[4], edited));
  }

  void hashIsThatOfTheStandard() {
    // FIPS 180-4, example "abc".
    QCOMPARE(sha256("abc"),
             std::string("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"));
  }
};

FETTLE_TEST(TestHistory)
#include "test_history.moc"
