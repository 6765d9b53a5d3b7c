#include "core/maths/shaper.h"

#include <QTest>
#include <cmath>
#include <limits>

#include "core/maths/ei_family.h"
#include "core/maths/residual_vibration.h"
#include "tests/support/near.h"
#include "tests/support/shaper_at.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using namespace fettle::tests;

namespace {

constexpr std::array dampings{0.0, 0.02, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3};

/// Heights of the maxima of V between `low` and `high` (of the design frequency), each refined by a
/// parabola through three neighbours; plateaus do not occur.
std::vector<double> humps(const Shaper& shaper, double damping, double low, double high) {
  constexpr double step = 1e-4;
  std::vector<double> heights;
  for (double r = low; r < high; r += step) {
    const double a = residualVibration(shaper, (r - step) * shaper.frequency, damping);
    const double b = residualVibration(shaper, r * shaper.frequency, damping);
    const double c = residualVibration(shaper, (r + step) * shaper.frequency, damping);
    if (b > a && b >= c) {
      heights.push_back(b - (c - a) * (c - a) / (8.0 * (a - 2.0 * b + c)));
    }
  }
  return heights;
}

/// Number of frequency ratios between `low` and `high` where V touches 0.
int zeros(const Shaper& shaper, double damping, double low, double high) {
  constexpr double step = 1e-4;
  int count = 0;
  for (double r = low; r < high; r += step) {
    const double b = residualVibration(shaper, r * shaper.frequency, damping);
    if (b < 1e-3 && b < residualVibration(shaper, (r - step) * shaper.frequency, damping) &&
        b <= residualVibration(shaper, (r + step) * shaper.frequency, damping)) {
      ++count;
    }
  }
  return count;
}

}  // namespace

class TestShaper : public QObject {
  Q_OBJECT

 private slots:
  /// Keys are those of the trade's literature as written in results.
  void keys() {
    std::string all;
    for (const ShaperKind kind : shaperKinds) {
      all += std::string(shaperKey(kind)) + " ";
    }
    QCOMPARE(all, std::string("zv zvd zvdd ei ei_two_hump ei_three_hump "));
  }

  /// Every shaper: shares above 0 that sum to 1, times that rise from 0, at every damping and tolerance.
  void impulsesAreShares() {
    for (const ShaperKind kind : shaperKinds) {
      for (const double damping : dampings) {
        for (const double tolerance : {0.01, 0.02, 0.05}) {
          const auto shape = shaperShape(kind, damping, tolerance);
          QVERIFY2(
              shape.has_value(),
              qPrintable(QString("%1 at %2, %3").arg(shaperKey(kind).data()).arg(damping).arg(tolerance)));
          double sum = 0.0;
          double last = -1.0;
          for (const Impulse& impulse : shape->impulses) {
            QVERIFY(impulse.amplitude > 0.0);
            QVERIFY(impulse.time > last);
            sum += impulse.amplitude;
            last = impulse.time;
          }
          QCOMPARE(shape->impulses.front().time, 0.0);
          VERIFY_NEAR(sum, 1.0, 1e-12);
        }
      }
    }
  }

  /// K = exp(−ζπ/√(1−ζ²)): 1, K over 1 + K; 1, 2K, K²; 1, 3K, 3K², K³ (Singer and Seering 1990; binomial).
  void zeroVibrationAmplitudes() {
    const std::vector<std::vector<double>> expected{{0.578286182, 0.421713818},
                                                    {0.334414908, 0.487742548, 0.177842545},
                                                    {0.193387520, 0.423082163, 0.308531658, 0.074998659}};
    for (std::size_t i = 0; i < expected.size(); ++i) {
      const auto shape = shaperShape(shaperKinds[i], 0.1);
      QCOMPARE(shape->impulses.size(), expected[i].size());
      for (std::size_t j = 0; j < expected[i].size(); ++j) {
        VERIFY_NEAR(shape->impulses[j].amplitude, expected[i][j], 1e-9);
        QCOMPARE(shape->impulses[j].time, 0.5 * static_cast<double>(j));
      }
    }
  }

  /// Times scale with the damped period 1/(f√(1−ζ²)).
  void scaling() {
    const Shaper shaper = shaperAt(ShaperKind::zvd, 40.0, 0.1);
    VERIFY_NEAR(shaper.impulses.back().time, 1.0 / (40.0 * std::sqrt(0.99)), 1e-15);
    QCOMPARE(shaper.frequency, 40.0);
    QCOMPARE(shaper.damping, 0.1);
  }

  /// The zv family leaves nothing at its own frequency and damping, whatever the damping. By construction.
  void zeroAtDesign() {
    for (const ShaperKind kind :
         {ShaperKind::zv, ShaperKind::zvd, ShaperKind::zvdd, ShaperKind::eiTwoHump}) {
      for (const double damping : dampings) {
        QVERIFY(residualVibration(shaperAt(kind, 37.0, damping), 37.0, damping) < 1e-12);
      }
    }
  }

  /// Closed forms at ζ = 0 (Singhose, Porter, Tuttle and Singer 1997, from memory, verified with NumPy).
  void undampedFamily() {
    const std::vector<std::vector<double>> expected{
        {0.262500000, 0.475000000, 0.262500000},
        {0.159797202, 0.340202798, 0.340202798, 0.159797202},
        {0.112379629, 0.237500000, 0.300240741, 0.237500000, 0.112379629}};
    for (int n = 1; n <= 3; ++n) {
      const auto shape = extraInsensitive(n, 0.0, 0.05);
      const auto& amplitudes = expected[static_cast<std::size_t>(n - 1)];
      QCOMPARE(shape->impulses.size(), amplitudes.size());
      for (std::size_t j = 0; j < amplitudes.size(); ++j) {
        VERIFY_NEAR(shape->impulses[j].amplitude, amplitudes[j], 1e-9);
        QCOMPARE(shape->impulses[j].time, 0.5 * static_cast<double>(j));
      }
    }
  }

  /// The constraints themselves, at every damping: as many humps as the name says between the outer zeros,
  /// each as high as the tolerance, and the zeros between and beside them. A parabola through points 1e-4
  /// apart finds the summit to better than 1e-9.
  void humpsAreAsHighAsTheTolerance() {
    const std::array kinds{ShaperKind::ei, ShaperKind::eiTwoHump, ShaperKind::eiThreeHump};
    for (std::size_t i = 0; i < kinds.size(); ++i) {
      for (const double damping : dampings) {
        for (const double tolerance : {0.02, 0.05}) {
          const Shaper shaper = shaperAt(kinds[i], 50.0, damping, tolerance);
          const auto band = insensitiveBand(shaper, damping, tolerance);
          QVERIFY(band.has_value());
          const double low = band->low / 50.0 + 1e-3;
          const double high = band->high.value_or(2.5 * 50.0) / 50.0 - 1e-3;
          const auto heights = humps(shaper, damping, low, high);
          if (band->high) {
            QCOMPARE(heights.size(), i + 1);
            QCOMPARE(zeros(shaper, damping, low, high), static_cast<int>(i) + 2);
          }
          for (std::size_t k = 0; k <= i && k < heights.size(); ++k) {
            // The single hump's constraint is V(1) = V; its summit lies beside, 1.05 % higher at ζ = 0.3.
            const double allowed = kinds[i] == ShaperKind::ei ? 0.011 * tolerance : 1e-8;
            QVERIFY2(std::abs(heights[k] - tolerance) < allowed,
                     qPrintable(QString("hump %1 of %2 at %3: %4")
                                    .arg(k)
                                    .arg(i + 1)
                                    .arg(damping)
                                    .arg(heights[k], 0, 'g', 12)));
          }
        }
      }
    }
  }

  /// V at the design frequency is the tolerance for one and three humps; for three the slope there is 0.
  void levelAtDesign() {
    for (const ShaperKind kind : {ShaperKind::ei, ShaperKind::eiThreeHump}) {
      for (const double damping : dampings) {
        const Shaper shaper = shaperAt(kind, 50.0, damping);
        VERIFY_NEAR(residualVibration(shaper, 50.0, damping), 0.05, 1e-11);
        const double slope =
            (residualVibration(shaper, 50.001, damping) - residualVibration(shaper, 49.999, damping)) /
            0.002;
        QVERIFY(kind == ShaperKind::ei || std::abs(slope) < 1e-7);
      }
    }
  }

  void refusals() {
    QVERIFY(!shaperShape(ShaperKind::zv, -0.1));
    QVERIFY(!shaperShape(ShaperKind::zv, 0.6));
    QVERIFY(!shaperShape(ShaperKind::zv, std::numeric_limits<double>::quiet_NaN()));
    QVERIFY(!shaperShape(ShaperKind::ei, 0.1, 0.0));
    QVERIFY(!shaperShape(ShaperKind::ei, 0.1, 0.5));
    QVERIFY(!extraInsensitive(0, 0.1, 0.05));
    QVERIFY(!extraInsensitive(4, 0.1, 0.05));
  }
};

FETTLE_TEST(TestShaper)
#include "test_shaper.moc"
