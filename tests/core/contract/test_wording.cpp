#include "core/steps/contract/wording.h"

#include <QtTest>

#include "core/steps/contract/step.h"
#include "tests/support/test_main.h"

using namespace fettle;

namespace {

struct FanInputs {
  std::string heater;
  struct Row : TableRow {
    std::string place;
    std::optional<double> speed;
    void describe(FieldList& columns) {
      columns.text("place", place, "Place").required();
      columns.number("speed_mm_s", speed, "Speed", "mm/s").required();
    }
  };
  std::vector<Row> rows;
  void describe(FieldList& fields) {
    fields.choice("heater", heater, "Heater", {{"hot_end", "Hot end"}, {"bed", "Bed"}});
    fields.table("rows", rows, "Rows").required();
  }
};

struct FanResults {
  ResultKey<1> overshoot;
  ResultKey<2> gain, dip;
  ResultKey<1> speed;
  TextKey<1> proposed;
  TextKey<2> reason;
  SettingKey<1> rule;
  void describe(ResultList& results) {
    results.name("heater", {{"hot_end", "Hot end"}, {"bed", "Bed"}});
    results.name("rule", {{"simc", "SIMC"}, {"amigo", "AMIGO"}});
    results.quantity("<heater>.overshoot_C", overshoot, "Overshoot", "K").headline();
    results.quantity("<heater>.<rule>.Kp", gain, "Gain", "1/C");
    results.quantity("<heater>.<rule>.dip_C", dip, "Dip", "K");
    results.quantity("<place>.speed", speed, "Speed", "mm/s");
    results.text("<heater>.proposed", proposed, "Proposed rule").words({{"simc", "SIMC"}});
    results.text("<heater>.<rule>.reason", reason, "Reason");
    results.setting("<heater>.rule", rule, "Rule", "").words({{"simc", "SIMC"}});
  }
};

StepResult evaluate(const FanInputs& /*inputs*/, const StepContext& /*context*/) {
  return {};
}

const Step& fanStep() {
  static const Step step = [] {
    Step made;
    made.key = "fan";
    made.subjectField = "heater";
    return describedStep<FanResults, FanInputs>(std::move(made), &evaluate);
  }();
  return step;
}

QString said(const std::string& words) {
  return QString::fromStdString(words);
}

}  // namespace

/// That screens and the report say words, not the keys of files.
class TestWording : public QObject {
  Q_OBJECT

 private slots:
  void typedNamesKeepTheirSpelling() {
    StepResult result;
    result.give(keysOf<FanResults>().speed(Name("24_v", "24 V")), 3.0);
    result.give(keysOf<FanResults>().speed(Name("24_v_2", "24 V, second")), 4.0);
    const Wording wording(fanStep(), &result);
    QCOMPARE(said(wording.label("24_v.speed")), QString("24 V: Speed"));
    QCOMPARE(said(wording.owner("24_v_2.speed")), QString("24 V, second"));
  }

  void choicesAreSaidByTheirNames() {
    const Wording wording(fanStep());
    QCOMPARE(said(wording.label("bed.simc.Kp")), QString("Bed, SIMC: Gain"));
    QCOMPARE(said(wording.owner("bed.amigo.Kp")), QString("Bed, AMIGO"));
    QCOMPARE(said(wording.text("bed.proposed", "simc")), QString("SIMC"));
    QCOMPARE(said(wording.text("bed.simc.reason", "It is simc.")), QString("It is simc."));
    QCOMPARE(said(wording.text("bed.rule", "simc")), QString("SIMC"));
  }

  void theSubjectIsSaidInWordsAndNotRepeated() {
    QCOMPARE(said(subjectName(fanStep(), {{"heater", "bed"}}, "hot_end")), QString("Bed"));
    QCOMPARE(said(subjectName(fanStep(), Json::object(), "hot_end")), QString("Hot end"));
    QCOMPARE(said(subjectName(fanStep(), Json(), "")), QString());
    const Wording wording(fanStep(), nullptr, "Bed");
    QCOMPARE(said(wording.label("bed.overshoot_C")), QString("Overshoot"));
    QCOMPARE(said(wording.owner("bed.simc.Kp")), QString("SIMC"));
    QCOMPARE(said(wording.label("hot_end.overshoot_C")), QString("Hot end: Overshoot"));
  }

  void whatIsMissingIsNamedByRowAndColumn() {
    const Wording wording(fanStep());
    QCOMPARE(said(wording.paths({"rows[1].place", "rows[1].speed_mm_s", "rows[2].place", "heater"})),
             QString("Rows, row 1: Place, Speed; Rows, row 2: Place; Heater"));
  }

  void textsOfOwnersStandWithTheirTable() {
    const auto& key = keysOf<FanResults>();
    StepResult result;
    for (const char* rule : {"simc", "amigo"}) {
      result.give(key.dip("bed", rule), 0.1);
      result.give(key.reason("bed", rule), "It dips by 0.1 K.");
    }
    result.give(key.proposed("bed"), "simc");
    const ArrangedResults arranged = arrangeResults(Wording(fanStep(), &result), result);
    QCOMPARE(arranged.tables.size(), std::size_t{1});
    QCOMPARE(arranged.tables[0].notes.size(), std::size_t{1});
    QCOMPARE(said(arranged.tables[0].notes[0].texts[1]), QString("It dips by 0.1 K."));
    QCOMPARE(arranged.texts.size(), std::size_t{1});
    QCOMPARE(said(arranged.texts[0].first), QString("Bed: Proposed rule"));
    QCOMPARE(said(arranged.texts[0].second), QString("SIMC"));
  }
};

FETTLE_TEST(TestWording)
#include "test_wording.moc"
