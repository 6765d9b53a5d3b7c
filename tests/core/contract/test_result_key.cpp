#include "core/steps/contract/result_key.h"

#include <QTest>

#include "core/steps/contract/result_list.h"
#include "core/steps/contract/step_result.h"
#include "tests/support/test_main.h"

using namespace fettle;

namespace {

struct ModeResults {
  ResultKey<3> mode;
  ResultKey<> spread;
  ResultKey<1> wrong;
  void describe(ResultList& results) {
    results.name("axis", {{"x", "x axis"}});
    results.quantity("<axis>.<position>.mode_<k>_hz", mode, "Frequency", "Hz")
        .headline()
        .within(30, std::nullopt);
    results.quantity("spread", spread, "Spread", "mm").judged();
  }
};

}  // namespace

/// Ids and their names. Expected: by inspection of the patterns.
class TestResultKey : public QObject {
  Q_OBJECT

 private slots:
  void namesFillTheirPlaces() {
    const ResultId id = keysOf<ModeResults>().mode("x", Name("front_left", "Front left"), 2);
    QCOMPARE(id.id, std::string("x.front_left.mode_2_hz"));
    QCOMPARE(id.unit, std::string("Hz"));
    QCOMPARE(id.names, (std::vector<std::string>{"x axis", "Front left", "2"}));
  }

  void namesAreReadBackFromAnId() {
    const std::string pattern = "<axis>.<position>.mode_<k>_hz";
    QCOMPARE(namesIn("x.front.mode_12_hz", pattern).value(),
             (std::vector<std::string>{"x", "front", "12"}));
    QVERIFY(!namesIn("x.front.mode_hz", pattern));
    QVERIFY(!namesIn("x.mode_1_hz", pattern));
    QVERIFY(!namesIn("x.front.mode_1_hz.more", pattern));
    QCOMPARE(namesOf(pattern), (std::vector<std::string>{"axis", "position", "k"}));
    QVERIFY(matchesPattern("spread", "spread"));
  }

  void aPatternWithOtherPlacesIsAMistakeOfTheStep() {
    ResultKey<1> key;
    ResultList list;
    QVERIFY_EXCEPTION_THROWN(list.quantity("spread", key, "Spread", "mm"), std::logic_error);
  }

  void descriptionsStandWithTheKeys() {
    ModeResults results;
    ResultList list;
    results.describe(list);
    QCOMPARE(list.headlines(), std::vector<std::string>{"<axis>.<position>.mode_<k>_hz"});
    QVERIFY(list.results()[0].judged && list.results()[0].tolerance == (Tolerance{30, std::nullopt}));
    QVERIFY(list.results()[1].judged && !list.results()[1].tolerance.named());
  }

  void anotherUnitThanDescribedIsAMistakeOfTheStep() {
    StepResult result;
    QVERIFY_EXCEPTION_THROWN(result.give(keysOf<ModeResults>().spread, plainQuantity(1, "Hz")),
                             std::logic_error);
  }
};

FETTLE_TEST(TestResultKey)
#include "test_result_key.moc"
