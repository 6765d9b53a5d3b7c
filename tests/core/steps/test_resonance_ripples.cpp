#include "core/steps/resonance/ripples.h"

#include <QTest>
#include <cmath>
#include <numbers>

#include "core/steps/contract/step.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle;

namespace {

RippleRow rippleRow(const char* axis, double speed, double count, double distance,
                    const char* amplitudes = "") {
  RippleRow made;
  made.number = 1;
  made.axis = axis;
  made.speed = speed;
  made.count = count;
  made.distance = distance;
  made.amplitudes = amplitudes;
  return made;
}

const Instrument caliper = instruments::caliper();

}  // namespace

/// Expected values by hand from f = v·N/L, u(N) = 0.25 and the caliper's r = 0.01 mm, e = 0.03 mm; damping
/// from amplitudes built of a known decrement.
class TestResonanceRipples : public QObject {
  Q_OBJECT

 private slots:
  void oneRow() {
    const Ripple ripple = rippleOf({rippleRow("x", 100, 5, 11.25)}, caliper);
    VERIFY_NEAR(ripple.frequency.value, 400.0 / 9.0, 1e-12);
    const double relative =
        std::sqrt(std::pow(0.25 / 5, 2) + (0.01 * 0.01 / 12 + 0.03 * 0.03 / 3) / (11.25 * 11.25));
    VERIFY_NEAR(*ripple.frequency.u, ripple.frequency.value * relative, 1e-12);
    QVERIFY(std::isinf(ripple.frequency.dof));
    QVERIFY(!ripple.damping);
    const ModeSet set = ripple.asModes(0.07);
    QCOMPARE(set.modes.size(), std::size_t(1));
    QCOMPARE(set.modes[0].damping, 0.07);
    VERIFY_NEAR(set.modes[0].weight(), 1, 1e-12);  // no amplitude was read
  }

  /// Rows at 44 and 46 Hz: mean 45, s = √2 Hz, s/√n = 1 Hz with one degree of freedom.
  void repeats() {
    std::vector<Ripple> ripples;
    for (const auto& rows :
         rowsByAxis({rippleRow("x", 88, 10, 20), rippleRow("y", 60, 4, 8), rippleRow("x", 92, 10, 20)})) {
      ripples.push_back(rippleOf(rows, caliper));
    }
    QCOMPARE(ripples.size(), std::size_t(2));
    QCOMPARE(ripples[0].axis, std::string("x"));
    VERIFY_NEAR(ripples[0].frequency.value, 45, 1e-12);
    double own = 0;
    for (const double f : {44.0, 46.0}) {
      own += std::pow(f / 2, 2) * (std::pow(0.025, 2) + std::pow(0.01 / 20, 2) / 12);
    }
    const double common = 45 * 0.03 / 20 / std::sqrt(3.0);
    const double u = std::sqrt(1 + own + common * common);
    VERIFY_NEAR(*ripples[0].frequency.u, u, 1e-12);
    VERIFY_NEAR(ripples[0].frequency.dof, std::pow(u, 4), 1e-9);  // Welch–Satterthwaite, ν = 1
    QCOMPARE(ripples[1].frequency.value, 30.0);
  }

  /// Amplitudes 0.2·exp(−0.3 n) have δ = 0.3: ζ = 0.3/√(4π² + 0.09).
  void decrement() {
    const Ripple ripple =
        rippleOf({rippleRow("x", 100, 3, 7, "0.2; 0.1481636441 0.1097623272\t0.0813139319")}, caliper);
    QVERIFY(ripple.damping.has_value());
    const double zeta = 0.3 / std::sqrt(4 * std::numbers::pi * std::numbers::pi + 0.09);
    VERIFY_NEAR(ripple.damping->value, zeta, 1e-9);
    QCOMPARE(ripple.amplitude, 0.2);
    const ModeSet set = ripple.asModes(0.05);
    VERIFY_NEAR(set.modes[0].damping, zeta, 1e-9);
    VERIFY_NEAR(set.modes[0].weight(), 0.2, 1e-12);
  }

  /// Two crests give a damping but no scatter, so no uncertainty; with a decimal comma as well.
  void twoCrests() {
    const Ripple ripple = rippleOf({rippleRow("x", 100, 3, 7, "0,2 0,1")}, caliper);
    const double delta = std::log(2.0);
    VERIFY_NEAR(ripple.damping->value,
                delta / std::sqrt(4 * std::numbers::pi * std::numbers::pi + delta * delta), 1e-12);
    QVERIFY(!ripple.damping->u);
  }

  void refusals_data() {
    QTest::addColumn<QString>("amplitudes");
    QTest::newRow("word") << "0.2 small";
    QTest::newRow("zero") << "0.2 0";
    QTest::newRow("negative") << "0.2 -0.1";
    QTest::newRow("rising") << "0.1 0.2";
    QTest::newRow("level") << "0.1 0.1 0.1";
  }
  void refusals() {
    QFETCH(QString, amplitudes);
    try {
      rippleOf({rippleRow("x", 100, 3, 7, amplitudes.toUtf8().constData())}, caliper);
      QFAIL("amplitudes that mean nothing were taken");
    } catch (const Refusal& refusal) {
      QVERIFY(refusal.sentence.starts_with("Printed ripples, row 1: "));
      QVERIFY(refusal.sentence.ends_with('.'));
      QCOMPARE(refusal.at, std::string("ripples[1]"));
    }
  }

  /// From rest to 100 mm/s at 2000 mm/s²: 100²/4000 = 2.5 mm.
  void skip() { QCOMPARE(lengthToSkip(100, 2000), 2.5); }
};

FETTLE_TEST(TestResonanceRipples)
#include "test_resonance_ripples.moc"
