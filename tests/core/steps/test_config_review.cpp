#include "tests/support/config_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

class TestConfigReview : public QObject {
  Q_OBJECT
  const Step& step = *findStep("config-review");

  StepResult evaluated(const Json& inputs, const StepContext& context = bench()) const {
    return evaluatedOrEnd(step, inputs, context);
  }
  StepResult evaluated(const StepContext& context) const { return evaluated(Json::object(), context); }
  StepResult listed(const Json& rows, const StepContext& context = bench()) const {
    return evaluated({{"found", rows}}, context);
  }

 private slots:
  void everythingIsDescribed() {
    StepContext bad = with(with(bench(), "x.steps_per_mm", 100), "travel_max_x", 350);
    bad.sheet.x.motorCurrent = 1.6;
    bad.sheet.hotEndLiner = true;
    StepContext bare;
    bare.asFound["flow_factor"] = {1.0, {}};
    for (const auto& context : {bench(), bad, bare}) {
      const auto result = evaluated(context);
      QCOMPARE(undescribed(step, result), QString());
      QCOMPARE(unsoundCharts(result), QString());
    }
  }

  void nothingIsWrong() {
    const auto result = evaluated(bench());
    QVERIFY2(result.findings.empty(), result.findings.empty() ? "" : result.findings[0].text.c_str());
    QCOMPARE(valueOf(result, "inconsistencies"), 0.0);
    QCOMPARE(result.verdict(), Verdict::pass);
    QVERIFY(result.settings.empty() && result.found.empty());
  }

  void stepsPerMm() {
    const auto result = evaluated(bench());
    VERIFY_NEAR(valueOf(result, "x.steps_per_mm_expected"), 80, 1e-12);
    VERIFY_NEAR(valueOf(result, "z.steps_per_mm_expected"), 400, 1e-12);
    VERIFY_NEAR(valueOf(result, "x.steps_per_mm_ratio"), 1, 1e-12);
    // 100 on a drive of 80: 125 mm instead of 100. 160: twice the microsteps. 81: 1.25 %.
    const auto other = evaluated(with(bench(), "x.steps_per_mm", 100));
    QCOMPARE(findingOf(other, "steps-per-mm")->severity, Severity::fault);
    QVERIFY(says(findingOf(other, "steps-per-mm"), "125.0 mm"));
    QCOMPARE(proposalOf(other, "x.steps_per_mm")->proposed.number, std::optional(80.0));
    QCOMPARE(verdictOf(other, "x.steps_per_mm_ratio"), Verdict::fail);
    QVERIFY(says(findingOf(evaluated(with(bench(), "x.steps_per_mm", 160)), "steps-per-mm"), "microsteps"));
    const auto adjusted = evaluated(with(bench(), "x.steps_per_mm", 81));
    QCOMPARE(findingOf(adjusted, "steps-per-mm")->severity, Severity::caution);
    QVERIFY(!findingOf(evaluated(with(bench(), "x.steps_per_mm", 80.3)), "steps-per-mm"));
    StepContext delta = with(bench(), "x.steps_per_mm", 100);
    delta.sheet.motion = "delta";
    QVERIFY(!findingOf(evaluated(delta), "steps-per-mm"));
    QCOMPARE(evaluated(delta).find("x.steps_per_mm_expected")->why,
             std::string("does not apply to this motion"));
    StepContext bare = bench();
    bare.sheet.x.teeth.reset();
    QVERIFY(evaluated(bare).find("x.steps_per_mm_expected")->why.find("Pulley teeth") != std::string::npos);
  }

  // Rated 1.5 A: 85 % are 1.275 A rms, 1.80312 A peak.
  void motorCurrents() {
    auto result = evaluated(bench());
    VERIFY_NEAR(valueOf(result, "x.current_ratio"), 0.8, 1e-12);
    QCOMPARE(verdictOf(result, "x.current_ratio"), Verdict::pass);
    StepContext context = with(bench(), "x.motor_current_A", 1.4);
    result = evaluated(context);
    VERIFY_NEAR(valueOf(result, "x.current_ratio"), 1.4 / 1.5, 1e-12);
    QCOMPARE(findingOf(result, "current-high")->severity, Severity::caution);
    QVERIFY(says(findingOf(result, "current-high"), "(1.275 A rms)"));
    QCOMPARE(valueOf(result, "inconsistencies"), static_cast<double>(result.findings.size()));
    VERIFY_NEAR(*proposalOf(result, "x.motor_current_A")->proposed.number, 1.275, 1e-12);
    context.asFound["x.current_is"] = {std::nullopt, "peak"};
    result = evaluated(context);
    VERIFY_NEAR(valueOf(result, "x.motor_current_rms_A"), 0.98995, 1e-5);
    QVERIFY(!findingOf(result, "current-high"));
    context.asFound["x.motor_current_A"] = {2.2, {}};
    result = evaluated(context);
    QCOMPARE(findingOf(result, "current-high")->severity, Severity::fault);
    VERIFY_NEAR(*proposalOf(result, "x.motor_current_A")->proposed.number, 1.803122, 1e-6);
    context.asFound.erase("x.current_is");
    context.sheet.x.currentIs.clear();
    QVERIFY(!evaluated(context).quantity("x.current_ratio"));
  }

  void temperatures() {
    StepContext context = bench();
    VERIFY_NEAR(valueOf(evaluated(context), "hot_end_limit_C"), 300, 0);
    context.sheet.hotEndLiner = true;
    auto result = evaluated(context);
    VERIFY_NEAR(valueOf(result, "hot_end_limit_C"), 240, 0);
    QVERIFY(says(findingOf(result, "hot-end-limit"), "300") &&
            says(findingOf(result, "hot-end-limit"), "240"));
    QVERIFY(says(findingOf(result, "hot-end-limit"), "polymer"));
    QCOMPARE(proposalOf(result, "hot_end_max_C")->proposed.number, std::optional(240.0));
    context.sheet.hotEndMax = 230;
    QVERIFY(!says(findingOf(evaluated(context), "hot-end-limit"), "polymer"));
    context.sheet.hotEndMax.reset();
    VERIFY_NEAR(valueOf(evaluated(context), "hot_end_limit_C"), 240, 0);
    QVERIFY(!findingOf(evaluated(with(context, "hot_end_max_C", 240)), "hot-end-limit"));
    QVERIFY(findingOf(evaluated(with(bench(), "bed_max_C", 120)), "bed-limit"));
  }

  void travelAndBed() {
    auto result = evaluated(with(bench(), "travel_max_x", 330));
    QVERIFY(says(findingOf(result, "travel-beyond"), "20 mm"));
    QCOMPARE(proposalOf(result, "travel_max_x")->proposed.number, std::optional(310.0));
    QVERIFY(findingOf(evaluated(with(bench(), "travel_min_y", -3)), "travel-beyond"));
    result = evaluated(with(bench(), "travel_max_x", 300));
    QCOMPARE(findingOf(result, "travel-unused")->severity, Severity::note);
    QCOMPARE(valueOf(result, "inconsistencies"), 0.0);
    QVERIFY(says(findingOf(evaluated(with(bench(), "bed_max_y", 320)), "bed-beyond"), "20 mm"));
    QVERIFY(!findingOf(evaluated(with(bench(), "bed_max_y", 290)), "bed-beyond"));
    result = evaluated(with(with(bench(), "travel_min_x", 320), "bed_max_x", 300));
    QVERIFY(findingOf(result, "limits-reversed") && !findingOf(result, "travel-beyond"));
    StepContext disc = with(bench(), "bed_radius", 120);
    disc.sheet.bedShape = "disc";
    disc.sheet.bedRadius = 110;
    QVERIFY(says(findingOf(evaluated(disc), "bed-radius"), "10 mm"));
  }

  // The tip at −10, 5 mm from the nozzle: travel 0 … 310 takes it to −10 … 300 in x and 5 … 315 in y, cut
  // to the bed 0 … 300 and 5 … 300.
  void probeReach() {
    const auto result = evaluated(bench());
    VERIFY_NEAR(valueOf(result, "safe_min_x"), 0, 1e-12);
    VERIFY_NEAR(valueOf(result, "safe_max_x"), 300, 1e-12);
    VERIFY_NEAR(valueOf(result, "safe_min_y"), 5, 1e-12);
    VERIFY_NEAR(valueOf(result, "safe_max_y"), 300, 1e-12);
    QVERIFY(findingOf(evaluated(with(bench(), "probe_offset_x", -400)), "no-reach"));
  }

  void probeOffTheBed() {
    // 318 − 300 = 18 mm.
    const auto result = evaluated(with(bench(), "probing_max_x", 318));
    QVERIFY(says(findingOf(result, "probe-off-bed"),
                 "The probe would touch at x = 318 mm, 18 mm beyond the bed"));
    QCOMPARE(findingOf(result, "probe-off-bed")->see, std::string("probe-position"));
    QVERIFY(says(findingOf(evaluated(with(bench(), "probing_min_y", -4)), "probe-off-bed"), "4 mm beyond"));
    // x = 290 with the tip 40 mm to the left needs the carriage at 330, 20 beyond 310; x = 10 with the tip
    // 40 mm to the right at −30.
    const auto left = evaluated(with(bench(), "probe_offset_x", -40));
    QVERIFY(says(findingOf(left, "probe-out-of-reach"), "330 mm, 20 mm beyond its travel (310 mm)"));
    QVERIFY(!findingOf(left, "probe-off-bed"));
    const auto right = evaluated(with(bench(), "probe_offset_x", 40));
    QVERIFY(says(findingOf(right, "probe-out-of-reach"), "30 mm beyond its travel (0 mm)"));
    QVERIFY(findingOf(evaluated(with(bench(), "probing_min_x", 295)), "limits-reversed"));
  }

  // Corner 80, 80 of a grid on a disc of 100 mm: √2·80 = 113.1 mm, 13.1 beyond; 70, 70: 98.99, inside.
  void probeOffADisc() {
    StepContext context = bench();
    context.sheet.bedShape = "disc";
    context.sheet.bedRadius = 100;
    context.sheet.travelMinX = context.sheet.travelMinY = -150;
    for (const auto& [end, off] : {std::pair{80.0, true}, {70.0, false}}) {
      for (const char* axis : {"x", "y"}) {
        context.asFound[std::string("probing_min_") + axis] = {-end, {}};
        context.asFound[std::string("probing_max_") + axis] = {end, {}};
      }
      QCOMPARE(findingOf(evaluated(context), "probe-off-bed") != nullptr, off);
      QVERIFY(!off || says(findingOf(evaluated(context), "probe-off-bed"), "13.1 mm beyond"));
    }
  }

  // 3000 mm/s² on 310 mm: √930000 = 964.4 mm/s.
  void speeds() {
    VERIFY_NEAR(valueOf(evaluated(bench()), "x.reachable_speed"), 964.365, 1e-3);
    QVERIFY(!findingOf(evaluated(with(bench(), "x.top_speed", 960)), "speed-never-reached"));
    const auto result = evaluated(with(bench(), "x.top_speed", 18000));
    QVERIFY(says(findingOf(result, "speed-never-reached"), "108000 mm"));
    QVERIFY(says(findingOf(result, "speed-never-reached"), "300"));
  }

  // The bench lists the upper end of x alone; with all four ends as on the sheet one outline tells both.
  void planDoesNotHideTheTravel() {
    const StepContext context =
        with(with(with(bench(), "travel_min_x", 0), "travel_min_y", 0), "travel_max_y", 310);
    const auto outlines = [&](const StepContext& of) {
      QStringList names;
      const auto result = evaluated(of);
      for (const auto& series : chartOf(result, "plan")->series) {
        names << QString::fromStdString(series.name + ", " + seriesRoleKey(series.role));
      }
      return names.mid(1, names.indexOf("travel of the tip, outline") - 1);  // the bed comes first
    };
    QCOMPARE(outlines(context), QStringList{"travel, as found the same, outline"});
    QCOMPARE(outlines(with(context, "travel_max_x", 300)),
             (QStringList{"travel, outline", "travel as found, comparison"}));
  }

  void theSheetsOwnContradictionsCome() {
    StepContext context = bench();
    context.sheet.bedMinX = -20;
    QVERIFY(findingOf(evaluated(context), "sheet-bed-outside"));
  }

  void theSettingsAreThoseOfOtherSteps() {
    for (const char* id : {"probe_offset_x", "probing_max_y", "probing_rows"}) {
      QVERIFY(findListed(id));
    }
    for (const auto& setting : listedSettings()) {
      const auto described =
          std::any_of(step.settings.begin(), step.settings.end(), [&](const SettingDescription& known) {
            return matchesPattern(setting.description.id, known.id) &&
                   known.unit == setting.description.unit;
          });
      QVERIFY2(described, setting.description.id.c_str());
    }
  }
};

FETTLE_TEST(TestConfigReview)
#include "test_config_review.moc"
