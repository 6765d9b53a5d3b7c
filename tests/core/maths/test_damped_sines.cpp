#include "core/maths/damped_sines.h"

#include <QTest>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

namespace {

struct Decay {
  std::vector<double> time;
  std::vector<double> samples;
};

/// One second at 1600 Hz that begins at 12.5 s, with normal noise.
Decay decay(const std::vector<DampedSine>& sines, double offset, double noise, unsigned seed) {
  std::mt19937 engine(seed);
  std::normal_distribution<double> normal(0.0, 1.0);
  Decay result;
  for (int j = 0; j < 1600; ++j) {
    const double t = j / 1600.0;
    double sample = offset + noise * normal(engine);
    for (const DampedSine& sine : sines) {
      const double omega = 2.0 * std::numbers::pi * sine.frequency;
      sample += sine.amplitude * std::exp(-sine.damping * omega * t) *
                std::sin(omega * std::sqrt(1.0 - sine.damping * sine.damping) * t + sine.phase);
    }
    result.time.push_back(12.5 + t);
    result.samples.push_back(sample);
  }
  return result;
}

const std::vector<DampedSine> two{{44.6, 0.055, 800.0, 0.4}, {78.0, 0.03, 300.0, -2.1}};

}  // namespace

class TestDampedSines : public QObject {
  Q_OBJECT

 private slots:
  /// Without noise the fit gives back what the signal was made from.
  void recoversExactly() {
    const Decay data = decay(two, 9810.0, 0.0, 0);
    const auto starts = dampedSineStarts(data.samples, 1600.0, 4);
    QCOMPARE(starts.size(), std::size_t{2});
    const auto fit = fitDampedSines(data.time, data.samples, starts);
    QVERIFY(fit.has_value());
    VERIFY_NEAR(fit->offset, 9810.0, 1e-4);
    for (std::size_t k = 0; k < 2; ++k) {
      VERIFY_NEAR(fit->sines[k].frequency / two[k].frequency, 1.0, 1e-7);
      VERIFY_NEAR(fit->sines[k].damping / two[k].damping, 1.0, 1e-6);
      VERIFY_NEAR(fit->sines[k].amplitude / two[k].amplitude, 1.0, 1e-6);
      VERIFY_NEAR(fit->sines[k].phase, two[k].phase, 1e-6);
    }
  }

  /// Noise with 100 fixed seeds: errors over standard errors look like a unit normal; mean within 0.35,
  /// spread 0.8 to 1.2 (3.5 and 3 standard errors of 100 draws).
  void standardErrorsAreHonest() {
    constexpr int runs = 100;
    std::vector<double> sum(8, 0.0);
    std::vector<double> squares(8, 0.0);
    for (unsigned seed = 1; seed <= runs; ++seed) {
      const Decay data = decay(two, 0.0, 30.0, seed);
      const auto fit = fitDampedSines(data.time, data.samples, dampedSineStarts(data.samples, 1600.0, 2));
      QVERIFY(fit && fit->sines.size() == 2);
      for (std::size_t k = 0; k < 2; ++k) {
        const DampedSine& sine = fit->sines[k];
        const DampedSine& error = fit->standardErrors[k];
        const std::array ratios{(sine.frequency - two[k].frequency) / error.frequency,
                                (sine.damping - two[k].damping) / error.damping,
                                (sine.amplitude - two[k].amplitude) / error.amplitude,
                                (sine.phase - two[k].phase) / error.phase};
        for (std::size_t i = 0; i < 4; ++i) {
          sum[4 * k + i] += ratios[i] / runs;
          squares[4 * k + i] += ratios[i] * ratios[i] / runs;
        }
      }
    }
    for (std::size_t i = 0; i < sum.size(); ++i) {
      const double spread = std::sqrt(squares[i] - sum[i] * sum[i]);
      QVERIFY2(std::abs(sum[i]) < 0.35, qPrintable(QString("mean %1 of %2").arg(sum[i]).arg(i)));
      QVERIFY2(spread > 0.8 && spread < 1.2, qPrintable(QString("spread %1 of %2").arg(spread).arg(i)));
    }
  }

  /// Pure noise has peaks but no sine that is determined.
  void noiseHoldsNoSine() {
    for (unsigned seed = 1; seed <= 10; ++seed) {
      const Decay data = decay({}, 0.0, 30.0, seed);
      const auto starts = dampedSineStarts(data.samples, 1600.0, 2);
      const auto fit = fitDeterminedDampedSines(data.time, data.samples, starts);
      for (std::size_t k = 0; fit && k < fit->sines.size(); ++k) {
        // What chance lines up has nearly no damping, over a second of one frequency, and little power.
        QVERIFY(fit->sines[k].damping < 0.01 || fit->sines[k].amplitude < 60.0);
      }
    }
  }

  void refusals() {
    Decay data = decay(two, 0.0, 0.0, 0);
    const std::vector<ModeStart> start{{44.0, 0.05}};
    QVERIFY(!fitDampedSines(data.time, data.samples, {}));
    QVERIFY(!fitDampedSines(std::span(data.time).first(9), data.samples, start));
    QVERIFY(!fitDampedSines(std::span(data.time).first(5), std::span(data.samples).first(5), start));
    QVERIFY(!fitDampedSines(data.time, data.samples, std::vector<ModeStart>{{44.0, 0.0}}));
    QVERIFY(dampedSineStarts(std::vector<double>(100, 3.0), 100.0, 3).empty());
    data.samples[3] = std::numeric_limits<double>::infinity();
    QVERIFY(!fitDampedSines(data.time, data.samples, start));
  }
};

FETTLE_TEST(TestDampedSines)
#include "test_damped_sines.moc"
