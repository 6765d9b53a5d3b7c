#include "core/maths/modes.h"

#include <QTest>
#include <cmath>
#include <limits>
#include <random>

#include "core/maths/peaks.h"
#include "core/maths/sdof.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

namespace {

struct Density {
  std::vector<double> frequency;
  std::vector<double> density;
};

/// The model on bins 0.78125 Hz apart from 10 to 115 Hz, times gamma noise as the mean of `averages`
/// independent periodograms has it; 0 averages: no noise.
Density synthetic(const ModalModel& model, int averages, unsigned seed) {
  std::mt19937 engine(seed);
  std::gamma_distribution<double> gamma(std::max(1, averages), 1.0 / std::max(1, averages));
  Density result;
  for (double f = 10.15625; f < 115.0; f += 0.78125) {
    result.frequency.push_back(f);
    result.density.push_back(modalDensity(model, f) * (averages > 0 ? gamma(engine) : 1.0));
  }
  return result;
}

/// Starts as a careful user of the fit makes them: prominent peaks, highest first.
std::vector<ModeStart> startsOf(const Density& data) {
  auto peaks = findPeaks(data.density);
  std::erase_if(peaks, [](const Peak& peak) { return peak.prominence < 0.5 * peak.height; });
  std::sort(peaks.begin(), peaks.end(), [](const Peak& a, const Peak& b) { return a.height > b.height; });
  std::vector<ModeStart> starts;
  for (const Peak& peak : peaks) {
    const auto damping = halfPowerDamping(data.frequency, data.density, peak.index);
    starts.push_back({data.frequency[peak.index], damping.value_or(0.05)});
  }
  return starts;
}

constexpr Interval range{10.0, 115.0};

void compareExactly(const ModalModel& fitted, const ModalModel& truth) {
  VERIFY_NEAR(fitted.amplitude / truth.amplitude, 1.0, 1e-6);
  VERIFY_NEAR(fitted.background, truth.background, 1e-6 * truth.amplitude);
  QCOMPARE(fitted.modes.size(), truth.modes.size());
  for (std::size_t k = 0; k < truth.modes.size(); ++k) {
    VERIFY_NEAR(fitted.modes[k].frequency / truth.modes[k].frequency, 1.0, 1e-6);
    VERIFY_NEAR(fitted.modes[k].damping / truth.modes[k].damping, 1.0, 1e-6);
    VERIFY_NEAR(fitted.modes[k].coefficient / truth.modes[k].coefficient, 1.0, 1e-6);
  }
}

}  // namespace

class TestModes : public QObject {
  Q_OBJECT

 private slots:
  /// Analytic derivatives against central differences of the model itself.
  void gradient() {
    ModalModel model{3.0, 0.2, {{44.0, 0.05, 0.8}, {78.0, 0.03, -0.3}}};
    Eigen::RowVectorXd gradient(model.parameters());
    for (const double f : {12.0, 43.0, 44.5, 60.0, 78.2, 110.0}) {
      modalDensity(model, f, gradient);
      const std::vector<double*> parameters{
          &model.amplitude,        &model.background,           &model.modes[0].frequency,
          &model.modes[0].damping, &model.modes[0].coefficient, &model.modes[1].frequency,
          &model.modes[1].damping, &model.modes[1].coefficient};
      for (std::size_t i = 0; i < parameters.size(); ++i) {
        const double value = *parameters[i];
        const double step = 1e-6 * std::abs(value);
        *parameters[i] = value + step;
        const double up = modalDensity(model, f);
        *parameters[i] = value - step;
        const double down = modalDensity(model, f);
        *parameters[i] = value;
        const double numeric = (up - down) / (2.0 * step);
        const double analytic = gradient[static_cast<Eigen::Index>(i)];
        // Rounding of S over the step bounds what the difference can show.
        VERIFY_NEAR(analytic, numeric, 1e-6 * std::abs(numeric) + 1e-9 * up / step);
      }
    }
  }

  /// A single mode with c = 1 is the absolute transmissibility of a base-excited oscillator,
  /// (1 + (2ζr)²)/((1 − r²)² + (2ζr)²) (textbook) — of which the relative-acceleration form differs only by
  /// 2iζr in the numerator: at ζ = 0 both are 1/(1 − r²)².
  void modelOfOneUndampedMode() {
    const ModalModel model{2.0, 0.0, {{50.0, 0.0, 1.0}}};
    for (const double r : {0.1, 0.5, 0.9, 1.3}) {
      VERIFY_NEAR(modalDensity(model, 50.0 * r) * std::pow(1.0 - r * r, 2), 2.0, 1e-12);
    }
  }

  /// Without noise the fit gives back what the density was made from; three modes, one of opposite sign.
  void recoversExactly() {
    const ModalModel two{20.0, 0.3, {{44.6, 0.055, 0.77}, {78.0, 0.05, 0.23}}};
    const ModalModel opposite{20.0, 0.3, {{44.6, 0.055, 0.77}, {78.0, 0.05, -0.23}}};
    const ModalModel three{1e-4, 1e-6, {{40.0, 0.04, 0.9}, {62.0, 0.03, -0.25}, {90.0, 0.03, 0.15}}};
    for (const ModalModel& truth : {two, opposite, three}) {
      const Density data = synthetic(truth, 0, 0);
      const auto starts = startsOf(data);
      QCOMPARE(starts.size(), truth.modes.size());
      const auto fit = fitModes(data.frequency, data.density, range, starts);
      QVERIFY(fit.has_value());
      compareExactly(fit->model, truth);
      if (QTest::currentTestFailed()) {
        return;
      }
    }
  }

  /// Noise of 20 averages, 200 fixed seeds: each parameter's error over its standard error must look like a
  /// unit normal: mean within 0.25, spread 0.85 to 1.15 (3.5 and 3 standard errors of 200 draws; the second
  /// tolerance leaves room for the curvature of the model). Frequency, damping and coefficient only: the
  /// amplitude is biased by design.
  void standardErrorsAreHonest() {
    const ModalModel truth{20.0, 0.3, {{44.6, 0.055, 0.77}, {78.0, 0.05, 0.23}}};
    constexpr int runs = 200;
    std::vector<double> sum(6, 0.0);
    std::vector<double> squares(6, 0.0);
    for (unsigned seed = 1; seed <= runs; ++seed) {
      const Density data = synthetic(truth, 20, seed);
      const auto fit =
          fitModes(data.frequency, data.density, range, std::vector<ModeStart>{{44.5, 0.06}, {78.1, 0.06}});
      QVERIFY(fit.has_value());
      for (std::size_t k = 0; k < 2; ++k) {
        const Mode& mode = fit->model.modes[k];
        const Mode& error = fit->standardErrors.modes[k];
        const std::array ratios{(mode.frequency - truth.modes[k].frequency) / error.frequency,
                                (mode.damping - truth.modes[k].damping) / error.damping,
                                (mode.coefficient - truth.modes[k].coefficient) / error.coefficient};
        for (std::size_t i = 0; i < 3; ++i) {
          sum[3 * k + i] += ratios[i] / runs;
          squares[3 * k + i] += ratios[i] * ratios[i] / runs;
        }
      }
    }
    for (std::size_t i = 0; i < sum.size(); ++i) {
      const double spread = std::sqrt(squares[i] - sum[i] * sum[i]);
      QVERIFY2(std::abs(sum[i]) < 0.25, qPrintable(QString("mean %1 of %2").arg(sum[i]).arg(i)));
      QVERIFY2(spread > 0.85 && spread < 1.15, qPrintable(QString("spread %1 of %2").arg(spread).arg(i)));
    }
  }

  /// A background of 0 is found as 0 and has no error; nothing goes negative.
  void backgroundAtItsBound() {
    const ModalModel truth{20.0, 0.0, {{44.6, 0.055, 0.77}}};
    int atBound = 0;
    for (unsigned seed = 1; seed <= 20; ++seed) {
      const Density data = synthetic(truth, 50, seed);
      const auto fit = fitModes(data.frequency, data.density, range, std::vector<ModeStart>{{44.5, 0.06}});
      QVERIFY(fit.has_value());
      QVERIFY(fit->model.background >= 0.0);
      if (fit->model.background == 0.0) {
        ++atBound;
        QCOMPARE(fit->standardErrors.background, 0.0);
        QCOMPARE(fit->degreesOfFreedom, static_cast<double>(data.density.size()) - 4.0);
      }
    }
    QVERIFY(atBound > 2 && atBound < 18);  // half of the draws, as noise has it
  }

  /// A start where there is no mode is dropped and the true mode kept.
  void dropsWhatTheDataDoNotShow() {
    const ModalModel truth{20.0, 0.3, {{44.6, 0.055, 0.77}}};
    for (unsigned seed = 1; seed <= 20; ++seed) {
      const Density data = synthetic(truth, 20, seed);
      const std::vector<ModeStart> starts{{44.5, 0.06}, {83.0, 0.02}, {25.0, 0.02}};
      const auto fit = fitDeterminedModes(data.frequency, data.density, range, starts);
      QVERIFY(fit.has_value());
      QVERIFY(!fit->model.modes.empty());
      for (std::size_t k = 0; k < fit->model.modes.size(); ++k) {
        const Mode& mode = fit->model.modes[k];
        QVERIFY(fit->standardErrors.modes[k].frequency <= 0.05 * mode.frequency);
        QVERIFY(fit->standardErrors.modes[k].damping <= 0.5 * mode.damping);
      }
      const Mode& first = fit->model.modes.front();
      VERIFY_NEAR(first.frequency, 44.6, 0.7);
      VERIFY_NEAR(first.damping, 0.055, 0.015);
    }
  }

  /// Flat noise holds no mode.
  void flatNoise() {
    const Density data = synthetic({5.0, 0.0, {}}, 20, 3);
    const auto fit = fitDeterminedModes(data.frequency, data.density, range,
                                        std::vector<ModeStart>{{60.0, 0.3}}, {0.005, 0.05});
    QVERIFY(!fit || fit->model.modes.empty());
  }

  void refusals() {
    Density data = synthetic({20.0, 0.0, {{44.6, 0.055, 0.77}}}, 0, 0);
    const std::vector<ModeStart> start{{44.0, 0.05}};
    QVERIFY(!fitModes(data.frequency, data.density, range, {}));
    QVERIFY(!fitModes(data.frequency, data.density, {40.0, 43.0}, start));
    QVERIFY(!fitModes(data.frequency, data.density, range, std::vector<ModeStart>{{0.0, 0.05}}));
    QVERIFY(!fitModes(data.frequency, data.density, range, std::vector<ModeStart>{{44.0, 1.0}}));
    QVERIFY(!fitModes(data.frequency, data.density, range, std::vector<ModeStart>(8, {44.0, 0.05})));
    QVERIFY(!fitModes(std::span(data.frequency).first(20), data.density, range, start));
    QVERIFY(!fitModes(data.frequency, std::vector<double>(data.density.size(), 0.0), range, start));
    data.density[20] = -1.0;
    QVERIFY(!fitModes(data.frequency, data.density, range, start));
    data.density[20] = std::numeric_limits<double>::quiet_NaN();
    QVERIFY(!fitModes(data.frequency, data.density, range, start));
  }
};

FETTLE_TEST(TestModes)
#include "test_modes.moc"
