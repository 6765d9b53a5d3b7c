#include "core/steps/resonance.h"

#include <QTest>
#include <cmath>
#include <numbers>

#include "tests/support/near.h"
#include "tests/support/resonance_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// Whole evaluations of simulated captures. What is true of them is known by construction; tolerances of
/// modes are those the methods were specified with: 0.7 Hz and 0.015.
class TestResonance : public QObject, private ResonanceBench {
  Q_OBJECT

  static std::string text(const StepResult& result, const std::string& id) {
    for (const auto& [key, words, names] : result.texts) {
      if (key == id) {
        return words;
      }
    }
    return {};
  }

 private slots:
  void initTestCase() {
    captures["two"] = sweepOf(twoModes);
    Shaking other;
    other.seed = 5;
    captures["front"] = sweepOf({{48.0, 0.06, 0.6}, {80.0, 0.04, 0.4}}, other);
  }

  void modesOfASweep() {
    const StepResult result = run({{"captures", {sweepRow("x", "Front left", "two")}}});
    QVERIFY(result.complete);
    VERIFY_NEAR(valueOf(result, "x.front_left.mode_1_hz"), 52, 0.7);
    VERIFY_NEAR(valueOf(result, "x.front_left.mode_1_damping"), 0.05, 0.015);
    VERIFY_NEAR(valueOf(result, "x.front_left.mode_2_hz"), 83, 0.7);
    VERIFY_NEAR(valueOf(result, "x.front_left.mode_2_damping"), 0.04, 0.015);
    QVERIFY(!result.find("x.front_left.mode_3_hz"));
    QCOMPARE(valueOf(result, "x.mode_1_hz"), valueOf(result, "x.front_left.mode_1_hz"));
    QVERIFY(result.quantity("x.mode_1_hz")->u.value() > 0);
    QVERIFY(std::isfinite(result.quantity("x.mode_1_hz")->dof));
    QCOMPARE(text(result, "x.deciding_position"), std::string("front_left"));
    QVERIFY2(result.findings.empty(), result.findings.empty() ? "" : result.findings[0].text.c_str());
    QCOMPARE(result.verdict(), Verdict::none);
  }

  /// The six shapers with all their results; e = aσ²/2 and e = ¼aσ² + ½v·Σ A|t − t̄| are checked in
  /// test_resonance_choice, here that they belong together.
  void candidatesAndSettings() {
    StepContext context;
    context.asFound["x.acceleration"] = {3000.0, {}};
    context.asFound["x.shaper"] = {std::nullopt, "zv"};
    const StepResult result =
        run({{"captures", {sweepRow("x", "centre", "two")}}, {"path_deviation_mm", 0.2}}, context);
    const std::string proposed = text(result, "x.proposed");
    for (const char* shaper : {"zv", "zvd", "zvdd", "ei", "ei_two_hump", "ei_three_hump"}) {
      const std::string prefix = std::string("x.") + shaper + ".";
      const double frequency = valueOf(result, prefix + "frequency_hz");
      VERIFY_NEAR(10 * frequency, std::round(10 * frequency), 1e-9);
      const double sigma = valueOf(result, prefix + "sigma_s");
      VERIFY_NEAR(valueOf(result, prefix + "acceleration_limit") * sigma * sigma / 2, 0.2, 1e-12);
      QVERIFY(valueOf(result, prefix + "duration_s") > sigma);
      QVERIFY(valueOf(result, prefix + "corner_speed_limit") > 0);
      QVERIFY(valueOf(result, prefix + "band_low_hz") <= frequency);
      QVERIFY(valueOf(result, prefix + "band_high_hz") >= frequency);
      QVERIFY(result.quantity(prefix + "residual")->u.value() > 0);
      QVERIFY(!text(result, prefix + "reason").empty());
      if (shaper == proposed) {
        QVERIFY(valueOf(result, prefix + "residual") <= 0.05);
        QCOMPARE(text(result, "x.reason"), text(result, prefix + "reason"));
      }
    }
    QCOMPARE(result.settings.size(), std::size_t(3));
    QCOMPARE(result.settings[0].id, std::string("x.shaper"));
    QCOMPARE(result.settings[0].proposed.text, proposed);
    QCOMPARE(result.settings[0].asFound.text, std::string("zv"));
    QCOMPARE(result.settings[1].id, std::string("x.shaper_hz"));
    QCOMPARE(*result.settings[1].proposed.number, valueOf(result, "x." + proposed + ".frequency_hz"));
    QVERIFY(result.settings[1].u.value() > 0);
    QCOMPARE(result.settings[2].id, std::string("x.acceleration"));
    QCOMPARE(*result.settings[2].asFound.number, 3000.0);
    QCOMPARE(*result.settings[2].proposed.number, valueOf(result, "x." + proposed + ".acceleration_limit"));
  }

  /// Two places of one axis and a repeat; the axis' modes are those of the place that is left with most.
  void severalCaptures() {
    const StepResult result = run({{"captures",
                                    {sweepRow("x", "centre", "two"), sweepRow("x", "Centre", "two"),
                                     sweepRow("x", "front", "front"), sweepRow("y", "centre", "two")}}});
    QVERIFY(result.quantity("x.centre.mode_1_hz"));
    QCOMPARE(valueOf(result, "x.centre_2.mode_1_hz"), valueOf(result, "x.centre.mode_1_hz"));
    VERIFY_NEAR(valueOf(result, "x.front.mode_1_hz"), 48, 0.7);
    const std::string deciding = text(result, "x.deciding_position");
    QCOMPARE(valueOf(result, "x.mode_1_hz"), valueOf(result, "x." + deciding + ".mode_1_hz"));
    // y was recorded on column ay, which holds noise alone
    QVERIFY(!result.quantity("y.mode_1_hz"));
    QVERIFY(findingOf(result, "no-mode"));
    QCOMPARE(result.verdict(), Verdict::undecided);
    QCOMPARE(result.settings.size(), std::size_t(3));
  }

  /// A belt diagonal is (ax ± ay)/√2; a sensor that sits turned or reversed is put right.
  void diagonalsAndSensorAxes() {
    const double half = 1 / std::sqrt(2.0);
    captures["diagonal"] = changed(captures["two"], [&](Capture& c) {
      for (std::size_t i = 0; i < c.rows(); ++i) {
        const double along = c.columns["ax"][i];
        const double across = c.columns["ay"][i];
        c.columns["ax"][i] = half * (along + across);
        c.columns["ay"][i] = half * (across - along);
      }
    });
    captures["turned"] = changed(captures["diagonal"], [](Capture& c) {
      std::swap(c.columns["ay"], c.columns["az"]);
      for (double& sample : c.columns["az"]) {
        sample = -sample;
      }
    });
    Json q = sweepRow("x", "q", "diagonal");
    q["direction"] = "q";
    Json p = sweepRow("x", "p", "diagonal");
    p["direction"] = "p";
    Json turned = sweepRow("x", "turned", "turned");
    turned["direction"] = "q";
    turned["sensor_y"] = "az_reversed";
    turned["sensor_z"] = "ay";
    const StepResult result = run({{"captures", {sweepRow("x", "plain", "two"), q, p, turned}}});
    VERIFY_NEAR(valueOf(result, "x.q.mode_1_hz"), valueOf(result, "x.plain.mode_1_hz"), 1e-6);
    VERIFY_NEAR(valueOf(result, "x.turned.mode_1_damping"), valueOf(result, "x.q.mode_1_damping"), 1e-6);
    QVERIFY(!result.quantity("x.p.mode_1_hz"));  // nothing but noise moves across
    const ResultValue* across = result.find("x.p.mode_1_hz");
    QVERIFY(across && !across->why.empty());
  }

  void flatExcitation() {
    Shaking flat;
    flat.constantVelocity = false;
    flat.strength = 4000;
    captures["flat"] = sweepOf(twoModes, flat);
    Json given = sweepRow("x", "centre", "flat");
    given["excitation"] = "flat";
    const StepResult result = run({{"captures", {given}}});
    VERIFY_NEAR(valueOf(result, "x.centre.mode_1_hz"), 52, 0.7);
    VERIFY_NEAR(valueOf(result, "x.centre.mode_1_damping"), 0.05, 0.015);
    VERIFY_NEAR(valueOf(result, "x.centre.mode_2_damping"), 0.04, 0.015);
  }

  /// A blow and what rings after it: 3000·exp(−ζωt)·sin with 38 Hz, ζ 0.06, and a third of 95 Hz, ζ 0.03.
  void tap() {
    std::vector<double> signal(4800, 0.0);
    std::mt19937 engine(9);
    std::normal_distribution<double> noise(0, 10);
    const double rate = 1600;
    for (std::size_t i = 0; i < signal.size(); ++i) {
      const double t = (static_cast<double>(i) - 800) / rate;
      for (const TrueMode& m : {TrueMode{38, 0.06, 3000}, TrueMode{95, 0.03, 1000}}) {
        const double omega = 2 * std::numbers::pi * m.frequency;
        signal[i] += t < 0 ? 0
                           : m.coefficient * std::exp(-m.damping * omega * t) *
                                 std::sin(omega * std::sqrt(1 - m.damping * m.damping) * t + 0.4);
      }
      signal[i] += noise(engine) + (i >= 798 && i < 803 ? 15000 : 0);
    }
    captures["tap"] = captureOf(signal, rate, 3, 10);
    const StepResult result =
        run({{"captures",
              {{{"axis", "x"}, {"position", "centre"}, {"kind", "tap"}, {"capture", {{"file", "tap"}}}}}}});
    VERIFY_NEAR(valueOf(result, "x.centre.mode_1_hz"), 38, 0.1);
    VERIFY_NEAR(valueOf(result, "x.centre.mode_1_damping"), 0.06, 0.003);
    VERIFY_NEAR(valueOf(result, "x.centre.mode_2_hz"), 95, 0.3);
    QVERIFY(chartOf(result, "decay", "x centre"));
    QCOMPARE(result.settings.size(), std::size_t(3));
  }

  /// Broad-band shaking of unknown spectrum: white noise through one mode.
  void whiteNoiseThroughOneMode() {
    std::mt19937 engine(4);
    std::normal_distribution<double> white(0, 800);
    const double rate = 1600;
    std::vector<double> signal(64000);
    ExactOscillator oscillator(47, 0.06, 1 / rate);
    for (double& sample : signal) {
      const double input = white(engine);
      sample = input - 0.8 * oscillator.step(input);
    }
    captures["run"] = captureOf(signal, rate);
    const StepResult result =
        run({{"captures",
              {{{"axis", "x"}, {"position", "centre"}, {"kind", "run"}, {"capture", {{"file", "run"}}}}}}});
    QVERIFY(findingOf(result, "excitation-unknown"));
    // White noise has no floor to stand out of ten times but at the peak itself: 1/(2ζ)² ≈ 70.
    VERIFY_NEAR(valueOf(result, "x.centre.mode_1_hz"), 47, 0.7);
    VERIFY_NEAR(valueOf(result, "x.centre.mode_1_damping"), 0.06, 0.015);
  }

  void ripples() {
    const Json ripple{{"axis", "x"}, {"speed_mm_s", 100}, {"count", 8}, {"distance_mm", 15.4}};
    const StepResult alone = run({{"ripples", {ripple}}});
    VERIFY_NEAR(valueOf(alone, "x.ripple_hz"), 800 / 15.4, 1e-9);
    QCOMPARE(valueOf(alone, "x.mode_1_hz"), valueOf(alone, "x.ripple_hz"));
    QCOMPARE(valueOf(alone, "x.mode_1_damping"), 0.05);
    QCOMPARE(alone.settings.size(), std::size_t(3));
    QVERIFY(findingOf(alone, "single-reading"));

    const StepResult beside = run({{"captures", {sweepRow("x", "a", "two")}}, {"ripples", {ripple}}});
    QVERIFY(!findingOf(beside, "ripple-disagrees"));  // 51.9 and 52 Hz
    Json wrong = ripple;
    wrong["count"] = 6;
    const StepResult disagrees = run({{"captures", {sweepRow("x", "a", "two")}}, {"ripples", {wrong}}});
    QVERIFY(findingOf(disagrees, "ripple-disagrees"));
    QCOMPARE(valueOf(disagrees, "x.mode_1_hz"), valueOf(disagrees, "x.a.mode_1_hz"));

    StepContext context;
    context.asFound["x.acceleration"] = {2000.0, {}};
    const StepResult skipped = run({{"ripples", {ripple}}}, context);
    QVERIFY(findingOf(skipped, "ripple-start"));
    QVERIFY(findingOf(skipped, "ripple-start")->text.find("2.5") != std::string::npos);
  }

  void excludedRow() {
    Json excluded = sweepRow("x", "front", "front");
    excluded["excluded"] = "spool fell over";
    const StepResult result = run({{"captures", {sweepRow("x", "centre", "two"), excluded}}});
    QVERIFY(!result.find("x.front.mode_1_hz"));
    QVERIFY(result.quantity("x.centre.mode_1_hz"));
  }

  void incomplete() {
    const StepResult empty = run(Json::object());
    QVERIFY(!empty.complete);
    QCOMPARE(empty.missing, std::vector<std::string>{"captures"});
    QVERIFY(!empty.charts.empty());
    Json half = sweepRow("x", "centre", "two");
    half.erase("sweep_from_hz");
    half.erase("capture");
    const StepResult missing = run({{"captures", {half}}});
    QCOMPARE(missing.missing,
             (std::vector<std::string>{"captures[1].sweep_from_hz", "captures[1].capture"}));
    Json tapRow = half;  // a tap needs no sweep
    tapRow["kind"] = "tap";
    QCOMPARE(run({{"captures", {tapRow}}}).missing, std::vector<std::string>{"captures[1].capture"});
  }

  void refusals() {
    captures["short"] = changed(captures["two"], [](Capture& c) {
      for (auto& [key, column] : c.columns) {
        column.resize(1500);
      }
    });
    captures["one axis"] = changed(captures["two"], [](Capture& c) {
      c.columns.erase("ay");
      c.columns.erase("az");
    });
    const auto with = [](const char* key, const Json& value, const char* file = "two") {
      Json changedRow = sweepRow("x", "centre", file);
      changedRow[key] = value;
      return Json{{"captures", {changedRow}}};
    };
    const std::vector<std::pair<Json, const char*>> wrong{
        {with("direction", "y"), "captures[1]"},
        {with("excitation", "tap"), "captures[1]"},
        {with("sweep_to_hz", 4), "captures[1]"},
        {with("sensor_y", "ax_reversed"), "captures[1]"},
        {with("load", "", "short"), "captures[1]"},
        {with("axis", "y", "one axis"), "captures[1]"},
        {with("direction", "p", "one axis"), "captures[1]"},
        {with("sweep_s", 0), "captures[1].sweep_s"},
        {with("axis", "w"), "captures[1].axis"},
    };
    for (const auto& [inputs, at] : wrong) {
      const auto result = tried(inputs);
      QVERIFY(result);
      const Finding* refused = findingOf(*result, "refused");
      QVERIFY2(refused && refused->at == at, inputs.dump().c_str());
      QVERIFY(QString::fromStdString(refused->text).startsWith("Captures, row 1"));
      QVERIFY(result->settings.empty() && !result->complete);
    }
    QVERIFY(!findingOf(*tried(with("load", "", "one axis")), "refused"));  // x needs ax alone
  }

  /// One axis is refused, the other keeps what it has.
  void aRefusedCaptureLeavesTheOtherAxis() {
    Json wrong = sweepRow("y", "centre", "two");
    wrong["sweep_to_hz"] = 4;
    const auto result = tried({{"captures", {sweepRow("x", "centre", "two"), wrong}}});
    QVERIFY(result);
    QCOMPARE(findingOf(*result, "refused")->at, std::string("captures[2]"));
    VERIFY_NEAR(valueOf(*result, "x.mode_1_hz"), 52, 0.7);
    QCOMPARE(result->settings.size(), std::size_t{3});
    QCOMPARE(result->find("y.mode_1_hz")->lacks, std::vector<std::string>{"captures[2]"});
    QVERIFY(!result->quantity("y.centre.mode_1_hz"));
    QVERIFY(!result->complete);
    // Of two captures of an axis the sound one counts.
    const auto same =
        tried({{"captures", {sweepRow("y", "front", "two"), wrong, sweepRow("x", "front", "two")}}});
    VERIFY_NEAR(valueOf(*same, "x.front.mode_1_hz"), 52, 0.7);
    QVERIFY(findingOf(*same, "refused"));
  }

  /// The pictures keep small enough to be stored with the history, whatever the capture.
  void chartsAreSmall() {
    const StepResult result =
        run({{"captures", {sweepRow("x", "centre", "two"), sweepRow("x", "front", "front")}}});
    for (const auto& [view, about] : {std::pair{"modes", "x"},
                                      {"columns", "x"},
                                      {"residual", "x"},
                                      {"candidates", "x"},
                                      {"picture", "x centre"},
                                      {"signal", "x centre"},
                                      {"picture", "x front"}}) {
      QVERIFY2(chartOf(result, view, about), view);
    }
    std::size_t bytes = 0;
    for (const Chart& chart : result.charts) {
      bytes += toJson(chart).dump().size();
    }
    qInfo("charts of two captures take %zu bytes", bytes);
    QVERIFY(bytes < 400000);
    // the tallest sample of the capture is still there
    const auto& samples = captures["two"]->column("ax");
    const double highest = *std::max_element(samples.begin(), samples.end());
    const Series& trace = chartOf(result, "signal", "x centre")->series[0];
    VERIFY_NEAR(*std::max_element(trace.yHigh.begin(), trace.yHigh.end()), highest, 1e-3 * highest);
    QCOMPARE(chartOf(result, "candidates", "x")->series.size(), std::size_t(6));  // the six shapers
  }

  void progressAndCancel() {
    StepContext context;
    double last = -1;
    bool rises = true;
    context.progress = [&](double share) {
      rises = rises && share >= last && share <= 1;
      last = share;
      return true;
    };
    run({{"captures", {sweepRow("x", "centre", "two"), sweepRow("x", "front", "front")}}}, context);
    QVERIFY(rises);
    QVERIFY(last > 0.8);
    for (const double stop : {0.0, 0.3, 0.75, 0.9}) {
      context.progress = [&](double share) { return share < stop; };
      const auto cancelled = tried({{"captures", {sweepRow("x", "centre", "two")}}}, context);
      QVERIFY(!cancelled);
      QCOMPARE(cancelled.error(), std::string("The work was cancelled."));
    }
  }
};

FETTLE_TEST(TestResonance)
#include "test_resonance.moc"
