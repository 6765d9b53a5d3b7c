#include "core/maths/residual_vibration.h"

#include <QTest>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "tests/support/near.h"
#include "tests/support/shaper_at.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using namespace fettle::tests;

namespace {

constexpr double pi = std::numbers::pi;

/// Amplitude of the free vibration of an oscillator after the last of several impulses, from its state just
/// after each, relative to that of one impulse of size 1 at time 0 seen at the same moment — no use of V's
/// formula.
double simulated(const Shaper& shaper, double frequency, double damping) {
  const double omega = 2.0 * pi * frequency;
  const double damped = omega * std::sqrt(1.0 - damping * damping);
  double position = 0.0;
  double velocity = 0.0;
  double now = 0.0;
  for (const Impulse& impulse : shaper.impulses) {
    const double wait = impulse.time - now;
    const double decay = std::exp(-damping * omega * wait);
    const double c = std::cos(damped * wait);
    const double s = std::sin(damped * wait);
    const double drift = (velocity + damping * omega * position) / damped;
    const double next = decay * (position * c + drift * s);
    velocity =
        decay * (velocity * c - (omega * omega * position + damping * omega * velocity) / damped * s);
    position = next;
    velocity += impulse.amplitude;
    now = impulse.time;
  }
  const double envelope = std::hypot(position, (velocity + damping * omega * position) / damped);
  return envelope * damped;  // one impulse of size 1 at once leaves the envelope 1/ω_d
}

}  // namespace

class TestResidualVibration : public QObject {
  Q_OBJECT

 private slots:
  /// By hand, undamped: zv |cos(πr/2)|, zvd cos², zvdd |cos³|.
  void undampedByHand() {
    for (double r = 0.1; r < 3.0; r += 0.1) {
      const double c = std::abs(std::cos(0.5 * pi * r));
      VERIFY_NEAR(residualVibration(shaperAt(ShaperKind::zv, 40.0, 0.0), 40.0 * r, 0.0), c, 1e-14);
      VERIFY_NEAR(residualVibration(shaperAt(ShaperKind::zvd, 40.0, 0.0), 40.0 * r, 0.0), c * c, 1e-14);
      VERIFY_NEAR(residualVibration(shaperAt(ShaperKind::zvdd, 40.0, 0.0), 40.0 * r, 0.0), c * c * c,
                  1e-14);
    }
  }

  /// The formula against an oscillator hit by the impulses one by one, design damping and another one.
  void oscillatorHitByImpulses() {
    for (const ShaperKind kind : shaperKinds) {
      const Shaper shaper = shaperAt(kind, 45.0, 0.08);
      for (const double frequency : {20.0, 38.0, 45.0, 52.0, 90.0}) {
        for (const double damping : {0.0, 0.03, 0.08, 0.2}) {
          const double expected = simulated(shaper, frequency, damping);
          VERIFY_NEAR(residualVibration(shaper, frequency, damping), expected, 1e-12);
        }
      }
    }
  }

  /// The quick search takes the largest of equally spaced values, ends included.
  void largestOfMany() {
    const Shaper shaper = shaperAt(ShaperKind::eiTwoHump, 45.0, 0.08);
    double expected = 0.0;
    for (int i = 0; i <= 40; ++i) {
      expected = std::max(expected, residualVibration(shaper, 30.0 + 0.5 * i, 0.05));
    }
    VERIFY_NEAR(largestResidual(shaper, 30.0, 50.0, 0.05, 41), expected, 1e-13);
    const double end = residualVibration(shaper, 20.0, 0.05);
    VERIFY_NEAR(largestResidual(shaper, 20.0, 21.0, 0.05, 2), end, 1e-13);
  }

  /// Edges of the band are where V meets the limit; inside it is below, but for the summit of the one-hump
  /// shaper (0.35 % over at ζ = 0.2).
  void bandEdges() {
    for (const ShaperKind kind : shaperKinds) {
      for (const double damping : {0.0, 0.1, 0.2}) {
        const Shaper shaper = shaperAt(kind, 45.0, damping);
        const auto band = insensitiveBand(shaper, damping, 0.05);
        QVERIFY(band.has_value());
        QVERIFY(band->low < 45.0);
        VERIFY_NEAR(residualVibration(shaper, band->low, damping), 0.05, 1e-8);
        QVERIFY(residualVibration(shaper, band->low - 0.1, damping) > 0.05);
        if (band->high) {
          QVERIFY(*band->high > 45.0);
          VERIFY_NEAR(residualVibration(shaper, *band->high, damping), 0.05, 1e-8);
          QVERIFY(residualVibration(shaper, *band->high + 0.1, damping) > 0.05);
          QVERIFY(largestResidual(shaper, band->low, *band->high, damping, 2001) < 0.05 * (1.0 + 4e-3));
        }
      }
    }
  }

  /// One-hump limit above the design's residual: no band. A limit below a hump splits the band.
  void limitBelowTheHumps() {
    QVERIFY(!insensitiveBand(shaperAt(ShaperKind::ei, 45.0, 0.0), 0.0, 0.04));
    const auto band = insensitiveBand(shaperAt(ShaperKind::eiTwoHump, 45.0, 0.0), 0.0, 0.04);
    QVERIFY(band && band->high);
    QVERIFY(band->low > 0.8263 * 45.0 && *band->high < 1.1737 * 45.0);  // inside its humps
  }

  /// With much damping the last impulse is so small that V never exceeds the limit again.
  void openBand() {
    const Shaper shaper = shaperAt(ShaperKind::eiThreeHump, 45.0, 0.3);
    const auto band = insensitiveBand(shaper, 0.3, 0.2);
    QVERIFY(band && !band->high);
    QVERIFY(largestResidual(shaper, band->low, 225.0, 0.3, 5001) <= 0.2 + 1e-9);
    QVERIFY(!insensitivity(shaper, 0.3, 0.2));
  }
};

FETTLE_TEST(TestResidualVibration)
#include "test_residual_vibration.moc"
