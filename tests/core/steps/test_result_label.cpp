#include "core/steps/contract/wording.h"

#include <QtTest>

#include "core/steps/catalogue.h"
#include "tests/support/test_main.h"

using namespace fettle;

/// That screens and the report say words, not the keys of files.
class TestResultLabel : public QObject {
  Q_OBJECT

  static QString said(const std::string& words) { return QString::fromStdString(words); }

 private slots:
  void typedNamesKeepTheirSpelling() {
    const Wording wording(*findStep("safety"), {{"circuits", {{{"name", "24 V"}}, {{"name", "24 V"}}}}});
    QCOMPARE(said(wording.label("24_v.fuse_margin_A")), QString("24 V: Wire less fuse"));
    QCOMPARE(said(wording.owner("24_v_2.fuse_margin_A")), QString("24 V 2"));
    QCOMPARE(said(wording.label("critical_open")), QString("Critical items open"));
  }

  void choicesRulesAndShapersHaveTheirNames() {
    QCOMPARE(said(Wording(*findStep("safety")).owner("hot_end.power_W")), QString("Hot end"));
    const Wording heater(*findStep("heater-control"));
    QCOMPARE(said(heater.owner("bed.ziegler_nichols.Kp")), QString("Bed, Ziegler–Nichols"));
    QCOMPARE(said(heater.text("tyreus_luyben")), QString("Tyreus–Luyben"));
    const Wording resonance(*findStep("resonance"));
    QCOMPARE(said(resonance.owner("x.ei_two_hump.residual")), QString("x, two-hump EI"));
    QCOMPARE(said(resonance.text("It leaves 6 %, ei_two_hump.")), QString("It leaves 6 %, ei_two_hump."));
    QCOMPARE(said(Wording(*findStep("config-review")).label("x.steps_per_mm")), QString("x: Steps per mm"));
  }

  void theSubjectOfARunIsSaidInWords() {
    const Step& heater = *findStep("heater-control");
    QCOMPARE(said(subjectName(heater, {{"heater", "bed"}}, "hot_end")), QString("Bed"));
    QCOMPARE(said(subjectName(heater, Json::object(), "hot_end")), QString("Hot end"));
    QCOMPARE(said(subjectName(heater, Json(), "")), QString());
    // A step that names no such field has a table of heaters, not one.
    QCOMPARE(said(subjectName(*findStep("safety"), {{"heater", "bed"}}, "")), QString());
  }

  void theSubjectIsNotRepeated() {
    const Step& step = *findStep("heater-control");
    const Json inputs{{"heater", "bed"}};
    const Wording wording(step, inputs, subjectOf(step, inputs, ""));
    QCOMPARE(said(wording.label("bed.overshoot_C")), QString("Overshoot"));
    QCOMPARE(said(wording.owner("bed.simc.Kp")), QString("SIMC"));
    QCOMPARE(said(wording.label("hot_end.overshoot_C")), QString("Hot end: Overshoot"));
  }

  void whatIsMissingIsNamedByRowAndColumn() {
    const Wording wording(*findStep("mechanics"));
    QCOMPARE(said(wording.paths({"drag[1].axis", "drag[1].force_N", "drag[2].axis", "checks"})),
             QString("Drag, row 1: Axis, Force; Drag, row 2: Axis; Checks"));
  }

  void textsOfOwnersStandWithTheirTable() {
    const Step& step = *findStep("resonance");
    StepResult result;
    for (const char* shaper : {"x.zv.", "x.zvd."}) {
      result.give(std::string(shaper) + "residual", 0.1, "1");
      result.say(std::string(shaper) + "reason", "It leaves 10 %.");
    }
    result.say("x.recommended", "zvd");
    const Wording wording(step);
    const ArrangedResults arranged = arrangeResults(wording, result);
    QCOMPARE(arranged.tables.size(), std::size_t{1});
    QCOMPARE(arranged.tables[0].notes.size(), std::size_t{1});
    QCOMPARE(said(arranged.tables[0].notes[0].texts[1]), QString("It leaves 10 %."));
    QCOMPARE(arranged.texts.size(), std::size_t{1});
    QCOMPARE(said(arranged.texts[0].first), QString("x: Recommended shaper"));
    QCOMPARE(said(arranged.texts[0].second), QString("ZVD"));
  }
};

FETTLE_TEST(TestResultLabel)
#include "test_result_label.moc"
