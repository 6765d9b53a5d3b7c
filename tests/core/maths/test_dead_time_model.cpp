#include <QTest>
#include <cmath>
#include <numbers>
#include <vector>

#include "core/maths/dead_time_model.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

namespace {

struct Made {
  double gain, lag, secondLag, delay, step, start, interval;
  int rows;
};

struct Record {
  std::vector<double> time, output;
};

/// Answer of a second-order plant (first order for secondLag 0) with dead time to a step at 20 s, with a
/// scatter of 0.2·sin(0.7·i²) that any program repeats to rounding.
Record recordOf(const Made& made) {
  Record record;
  for (int i = 0; i <= made.rows; ++i) {
    const double time = i * made.interval;
    const double since = std::max(time - 20 - made.delay, 0.0);
    const double a = made.lag;
    const double b = made.secondLag;
    const double rest = (a * std::exp(-since / a) - (b > 0 ? b * std::exp(-since / b) : 0)) / (a - b);
    record.time.push_back(time);
    record.output.push_back(made.start + made.step * made.gain * (1 - rest) + 0.2 * std::sin(0.7 * i * i));
  }
  return record;
}

}  // namespace

class TestDeadTimeModel : public QObject {
  Q_OBJECT

 private slots:
  // Computed for 1/(s+1)^n (SciPy): times at 28.3 and 63.2 % and what the two points make of them.
  void twoPoints() {
    VERIFY_NEAR(throughTwoPoints(1, 1.051013, 2.145713).timeConstant, 1.642049, 1e-5);
    VERIFY_NEAR(throughTwoPoints(1, 1.051013, 2.145713).deadTime, 0.503664, 1e-5);
    VERIFY_NEAR(throughTwoPoints(1, 1.850736, 3.257662).timeConstant, 2.110389, 1e-5);
    VERIFY_NEAR(throughTwoPoints(1, 2.686801, 4.351311).deadTime, 1.854546, 1e-5);
    const DeadTimeModel exact = throughTwoPoints(1, 3 - std::log(1 - 0.28347) * 7, 3 + 7);
    VERIFY_NEAR(exact.timeConstant, 7, 1e-4);
    VERIFY_NEAR(exact.deadTime, 3, 1e-4);
  }

  // True ultimate points of first order with dead time, gain 1, lag 1: computed by SciPy brentq.
  void ultimatePoints() {
    const struct {
      double delay, gain, period;
    } cases[] = {
        {0.1, 16.35055, 0.38500}, {0.5, 3.80688, 1.71055}, {1, 2.26183, 3.09706}, {2, 1.51980, 5.49006}};
    for (const auto& c : cases) {
      const auto point = ultimatePointOf({1, 1, c.delay});
      QVERIFY(point);
      VERIFY_NEAR(point->gain, c.gain, 1e-5 * c.gain);
      VERIFY_NEAR(point->period, c.period, 1e-5 * c.period);
    }
    QVERIFY(!ultimatePointOf({1, 1, 0}) && !ultimatePointOf({0, 1, 1}) && !ultimatePointOf({1, 0, 1}));
  }

  // Exact limit cycles of the relay (Wang, Hang and Zou 1997; with hysteresis confirmed by simulation to
  // 1e-4), a for d = 1, and what the describing function makes of them.
  void relay() {
    VERIFY_NEAR(ultimateGainFromRelay(1, 0.095163, 0).value(), 13.37962, 1e-4);
    VERIFY_NEAR(ultimateGainFromRelay(1, 0.454122, 0.1).value(), 2.87429, 1e-5);
    VERIFY_NEAR(ultimateGainFromRelay(1, 0.668909, 0.1).value(), 1.92509, 1e-5);
    VERIFY_NEAR(ultimateGainFromRelay(1, 0.668909, 0).value(), 1.90346, 1e-5);
    QVERIFY(!ultimateGainFromRelay(1, 0.1, 0.1) && !ultimateGainFromRelay(0, 1, 0));
  }

  // SciPy 1.10 curve_fit on the same rows (lm, xtol = ftol = gtol = 1e-14, best of 30 starts in the dead
  // time): start, gain, time constant, dead time and their standard errors. Tolerance: the sum of squares
  // has a bend at every row the dead time passes, both stop within about 1e-5 of it.
  void fitsAgreeWithSciPy() {
    const struct {
      Made made;
      double sumOfSquares, parameters[4], errors[4];
    } cases[] = {
        {{520, 140, 5, 3.5, 0.42, 24, 0.5, 1400},
         74.60510365916248,
         {24.17082921, 519.78465927, 140.45569036, 8.38998748},
         {0.03060896, 0.07908796, 0.03949827, 0.0274181}},
        {{95, 900, 60, 10, 0.3, 60, 2, 1800},
         41.5461452758258,
         {60.19541815, 94.54855554, 911.39636812, 71.73981658},
         {0.0224188, 0.08121671, 1.2219428, 0.88213788}},
        {{480, 120, 0, 8, -0.1, 200, 1, 700},
         13.65582194803429,
         {200.02835728, 480.34257369, 119.99674837, 7.94658688},
         {0.0264523, 0.28119517, 0.1279217, 0.0940885}},
    };
    for (const auto& c : cases) {
      const Record record = recordOf(c.made);
      const auto fit = fitDeadTimeModel(record.time, record.output, 20, c.made.step);
      QVERIFY2(fit, fit ? "" : fit.error().c_str());
      const double found[] = {fit->start, fit->model.gain, fit->model.timeConstant, fit->model.deadTime};
      for (int k = 0; k < 4; ++k) {
        VERIFY_NEAR(found[k], c.parameters[k], 1e-2 * c.errors[k]);
        VERIFY_NEAR(fit->standardError(k), c.errors[k], 2e-3 * c.errors[k]);
      }
      double squares = 0;
      for (const double r : fit->residuals) {
        squares += r * r;
      }
      VERIFY_NEAR(squares, c.sumOfSquares, 1e-6 * c.sumOfSquares);
    }
  }

  // Built without scatter: the answer is exact.
  void recoversAnExactModel() {
    const DeadTimeModel truth{400, 90, 6.3};
    Record record;
    for (int i = 0; i < 600; ++i) {
      record.time.push_back(i);
      record.output.push_back(150 + 0.2 * truth.unitStep(i - 30));
    }
    const auto fit = fitDeadTimeModel(record.time, record.output, 30, 0.2);
    QVERIFY(fit && !fit->deadTimeHeld);
    VERIFY_NEAR(fit->model.gain, 400, 1e-6);
    VERIFY_NEAR(fit->model.timeConstant, 90, 1e-6);
    VERIFY_NEAR(fit->model.deadTime, 6.3, 1e-6);
  }

  /// Rows that rise before the step: no dead time fits, it is held at zero and the rest still found.
  void deadTimeIsNeverBelowZero() {
    Record record;
    for (int i = 0; i < 400; ++i) {
      record.time.push_back(i);
      record.output.push_back(20 + (i > 28 ? -100 * std::expm1(-(i - 28) / 50.0) : 0));
    }
    const auto fit = fitDeadTimeModel(record.time, record.output, 30, 1);
    QVERIFY(fit && fit->deadTimeHeld);
    QCOMPARE(fit->model.deadTime, 0.0);
    QCOMPARE(fit->standardError(3), 0.0);
    // The model has to start 2 s late, which costs a little gain.
    VERIFY_NEAR(fit->model.gain, 100, 2);
  }

  void refusesWhatItCannotFit() {
    const std::vector<double> time{0, 1, 2, 3, 4, 5, 6, 7};
    const std::vector<double> level(8, 20.0);
    QVERIFY(!fitDeadTimeModel(time, level, 2, 0));
    QVERIFY(!fitDeadTimeModel(time, level, 6, 1));
    QVERIFY(!fitDeadTimeModel(time, level, 2, 1));
    QVERIFY(!fitDeadTimeModel(time, std::vector<double>(7, 20.0), 2, 1));
    std::vector<double> broken = level;
    broken[3] = std::nan("");
    QVERIFY(!fitDeadTimeModel(time, broken, 2, 1));
  }

  // There and back: the ultimate point of a model leads to the model.
  void anUltimatePointAndAGainGiveTheModel() {
    const DeadTimeModel model{450, 120, 6};
    const auto back = modelWithUltimatePoint(model.gain, *ultimatePointOf(model));
    QVERIFY(back && std::abs(back->timeConstant - 120) < 1e-6 && std::abs(back->deadTime - 6) < 1e-9);
    QVERIFY(!modelWithUltimatePoint(10, {0.1, 40}));  // K·Ku = 1: no lag
    QVERIFY(!modelWithUltimatePoint(0, {0.1, 40}));
    QVERIFY(!modelWithUltimatePoint(450, {0.1, 0}));
  }
};

FETTLE_TEST(TestDeadTimeModel)
#include "test_dead_time_model.moc"
