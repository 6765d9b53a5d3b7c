#include "core/maths/sdof.h"

#include <QTest>
#include <cmath>
#include <limits>
#include <vector>

#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

class TestSdof : public QObject {
  Q_OBJECT

 private slots:
  /// δ = 2πζ/√(1−ζ²), textbook; nine digits computed with NumPy.
  void decrement() {
    const std::vector<std::pair<double, double>> table{
        {0.005, 0.0314163192}, {0.05, 0.314552702}, {0.1, 0.631483883}, {0.3, 1.97597037}};
    for (const auto& [damping, expected] : table) {
      VERIFY_NEAR(decrementFromDamping(damping), expected, 1e-8 * expected);
      VERIFY_NEAR(dampingFromDecrement(expected), damping, 1e-8 * damping);
    }
    QCOMPARE(dampingFromDecrement(0.0), 0.0);
  }

  /// A decay made with ζ = 0.1: its crests fall by exp(−δ) a period.
  void decrementOfADecay() {
    const double decrement = logarithmicDecrement(5.0, 5.0 * std::exp(-3.0 * 0.631483883), 3.0);
    VERIFY_NEAR(dampingFromDecrement(decrement), 0.1, 1e-9);
  }

  /// Displacement response: (f₂ − f₁)/(2f_peak) from the half-power points r² = 1 − 2ζ² ∓ 2ζ√(1−ζ²) and the
  /// peak r² = 1 − 2ζ² (any textbook), computed by hand. Steps of 0.01 Hz leave under 2e-5.
  void halfPower() {
    const std::vector<std::pair<double, double>> table{
        {0.1, 0.102062299}, {0.05, 0.0502518924}, {0.02, 0.0200160192}};
    for (const auto& [damping, expected] : table) {
      std::vector<double> frequency;
      std::vector<double> density;
      std::size_t peak = 0;
      for (int i = 0; i <= 10000; ++i) {
        const double r = 0.0002 * i;  // of 50 Hz
        frequency.push_back(50.0 * r);
        density.push_back(1.0 / (std::pow(1.0 - r * r, 2) + std::pow(2.0 * damping * r, 2)));
        peak = density.back() > density[peak] ? density.size() - 1 : peak;
      }
      const auto estimate = halfPowerDamping(frequency, density, peak);
      QVERIFY(estimate && std::abs(*estimate - expected) < 2e-5);
    }
  }

  /// A side that does not fall to half is the mirror of the other. By definition.
  void halfPowerOfOneSide() {
    const std::vector<double> frequency{8, 9, 10, 11, 12};
    const auto right = halfPowerDamping(frequency, std::vector<double>{7, 8, 10, 6, 4}, 2);
    QVERIFY(right && std::abs(*right - 3.0 / 20.0) < 1e-12);  // half of 10 is met at 11.5 Hz
    QVERIFY(!halfPowerDamping(frequency, std::vector<double>{7, 8, 10, 9, 8}, 2));
    QVERIFY(!halfPowerDamping(std::vector<double>{0, 1, 2}, std::vector<double>{5, 1, 1}, 0));
  }
};

FETTLE_TEST(TestSdof)
#include "test_sdof.moc"
