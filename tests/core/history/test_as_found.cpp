#include <QTest>
#include <algorithm>

#include "core/history/evaluation.h"
#include "core/history/settings_in_force.h"
#include "core/steps/contract/step_result.h"
#include "tests/support/test_main.h"

using namespace fettle;

namespace {

StepRun runOf(RecordId id, RecordId session, const char* step, const char* acceptedOn = "") {
  StepRun run;
  run.id = id;
  run.session = session;
  run.step = step;
  run.inputs = {{"margin", 5}};
  run.acceptedOn = acceptedOn;
  return run;
}

/// Delivered with an offset of −20 mm; session 2 adopts −23 in probe-position (run 4); in session 3 −30 is
/// read off the controller (run 5), and probe-position is run again (run 6).
History reviewed() {
  History history;
  history.machine.sheet = {{"name", "Test bench"}};
  history.machine.asFound["probe_offset_x"] = {{-20.0, {}}, "2026-01-01T08:00:00", "typed"};
  history.sessions = {{2, "2026-01-01T09:00:00", "A", "", "", {}, 0},
                      {3, "2026-02-01T09:00:00", "A", "", "", {}, 0}};
  history.runs = {runOf(4, 2, "probe-position", "2026-01-01T10:00:00"),
                  runOf(5, 3, "config-review", "2026-02-01T09:30:00"), runOf(6, 3, "probe-position")};
  history.runs[0].adopted = {{"probe_offset_x", {-23.0, {}}, "mm", 0.1, 0.2, "2026-01-01T10:00:00"}};
  history.evaluated[5].result.found = {{"probe_offset_x", {-30.0, {}}}, {"x.shaper", {std::nullopt, "zv"}}};
  return history;
}

double offset(const SettingValues& values) {
  return *values.at("probe_offset_x").number;
}

}  // namespace

/// How values read off the controller become as found. Rules: docstring of asFoundFor; dates and values are
/// made up here.
class TestAsFound : public QObject {
  Q_OBJECT

 private slots:
  void whatAnAcceptedReviewReadIsAsFound() {
    const History history = reviewed();
    QCOMPARE(offset(asFoundFor(history, 3)), -30.0);
    QCOMPARE(asFoundFor(history, 3).at("x.shaper").text, std::string("zv"));
    const auto context = contextFrom(snapshotFor(history, history.runs[2]));
    QVERIFY(context);
    QCOMPARE(context->asFoundNumber("probe_offset_x"), std::optional(-30.0));
  }

  void earlierSessionsDoNotSeeIt() {
    const History history = reviewed();
    QCOMPARE(offset(asFoundFor(history, 2)), -20.0);
    QVERIFY(!asFoundFor(history, 2).contains("x.shaper"));
  }

  void laterSessionsSeeItUntilSomethingElseIsAdopted() {
    History history = reviewed();
    history.sessions.push_back({9, "2026-03-01T09:00:00", "A", "", "", {}, 0});
    QCOMPARE(offset(asFoundFor(history, 9)), -30.0);
    history.runs[2].acceptedOn = "2026-02-01T11:00:00";
    history.runs[2].adopted = {{"probe_offset_x", {-31.0, {}}, "mm", 0.1, 0.2, "2026-02-01T11:00:00"}};
    QCOMPARE(offset(asFoundFor(history, 9)), -31.0);
    QCOMPARE(offset(asFoundFor(history, 3)), -30.0);
  }

  /// Adopted at 9:20, accepted at 9:30: the value read was there before.
  void whatTheSessionAdoptedComesAfterWhatItRead() {
    History history = reviewed();
    history.sessions.push_back({9, "2026-03-01T09:00:00", "A", "", "", {}, 0});
    history.runs[1].adopted = {{"probe_offset_x", {-21.0, {}}, "mm", 0.1, 0.2, "2026-02-01T09:20:00"}};
    QCOMPARE(offset(asFoundFor(history, 3)), -30.0);
    QCOMPARE(offset(asFoundFor(history, 9)), -21.0);
  }

  void deliveredValuesTypedAfterwardsCount() {
    History history = reviewed();
    history.machine.asFound["probe_offset_x"].date = "2026-02-01T10:00:00";
    QCOMPARE(offset(asFoundFor(history, 3)), -20.0);
  }

  void notAcceptedCountsForNothing() {
    History history = reviewed();
    history.runs[1].acceptedOn.clear();
    QCOMPARE(offset(asFoundFor(history, 3)), -23.0);
  }

  void theLastAcceptedReviewReplacesTheOthersOfItsSession() {
    History history = reviewed();
    history.runs.push_back(runOf(7, 3, "config-review", "2026-02-01T09:40:00"));
    history.evaluated[7].result.found = {{"probe_offset_x", {-32.0, {}}}};
    QCOMPARE(offset(asFoundFor(history, 3)), -32.0);
    QVERIFY(!asFoundFor(history, 3).contains("x.shaper"));
  }

  /// Else accepting a review would change what it was evaluated with.
  void aReviewDoesNotSeeItself() {
    History history = reviewed();
    QCOMPARE(offset(asFoundFor(history, history.runs[1])), -23.0);
    history.evaluated[5].with = snapshotFor(history, history.runs[1]);
    QVERIFY(!usesOlderValues(history.evaluated[5], history, history.runs[1]));
    history.evaluated[6].with = snapshotFor(history, history.runs[2]);
    history.runs[1].acceptedOn = "2026-02-01T09:50:00";  // what it brought was there before
    QVERIFY(!usesOlderValues(history.evaluated[6], history, history.runs[2]));
    history.evaluated[5].result.found["x.backlash"] = {0.1, {}};  // not known then
    QVERIFY(!usesOlderValues(history.evaluated[6], history, history.runs[2]));
    history.evaluated[5].result.found["probe_offset_x"] = {-33.0, {}};
    QVERIFY(usesOlderValues(history.evaluated[6], history, history.runs[2]));
  }

  void settingsInForceShowIt() {
    for (const auto& setting : settingsInForce(reviewed(), 3)) {
      if (setting.id == "probe_offset_x") {
        QCOMPARE(setting.asFound.number, std::optional(-30.0));
        QCOMPARE(setting.asFoundOn, std::string("2026-02-01T09:30:00"));
        return;
      }
    }
    QFAIL("no probe_offset_x");
  }

  /// In the words the results of the step have (wording.h), not in the letters of the id.
  void settingsAreNamedAsTheirStepNamesThem() {
    History history = reviewed();
    history.machine.asFound["hot_end.Kp"] = {{0.1, {}}, "2026-01-01T08:00:00", "typed"};
    const auto settings = settingsInForce(history, 3);
    const auto label = [&](const char* id) {
      const auto found = std::find_if(settings.begin(), settings.end(),
                                      [&](const auto& setting) { return setting.id == id; });
      return found == settings.end() ? std::string() : found->label;
    };
    QCOMPARE(label("hot_end.Kp"), std::string("Hot end: Proportional gain"));
    QCOMPARE(label("x.shaper"), std::string("x: Input shaper"));
  }

  void foundValuesSurviveStorage() {
    StepResult result;
    result.found = {{"probe_offset_x", {-30.5, {}}}, {"x.current_is", {std::nullopt, "rms"}}};
    const StepResult back = resultFromJson(toJson(result));
    QVERIFY(back.found == result.found);
    // A record from before there were any.
    QVERIFY(!toJson(StepResult{}).contains("found"));
    QVERIFY(resultFromJson(toJson(StepResult{})).found.empty());
  }
};

FETTLE_TEST(TestAsFound)
#include "test_as_found.moc"
