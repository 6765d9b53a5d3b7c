#include "core/steps/resonance/sampling.h"

#include <QTest>
#include <random>
#include <vector>

#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle;

/// Expected values by hand from the definitions: a gap is an interval over 1.5 × the median, the rate is
/// the number of other intervals over their summed time.
class TestCaptureSampling : public QObject {
  Q_OBJECT

 private slots:
  void even() {
    std::vector<double> time;
    for (int i = 0; i < 1001; ++i) {
      time.push_back(10 + i / 500.0);
    }
    const Sampling sampling = examineSampling(time);
    VERIFY_NEAR(sampling.rate, 500, 1e-6);
    QVERIFY(sampling.jitter < 1e-9);
    QVERIFY(sampling.gaps.empty());
    QCOMPARE(sampling.stretches.size(), std::size_t(1));
    QCOMPARE(sampling.stretches.front().end, time.size());
    QCOMPARE(sampling.duration, 2.0);
  }

  void gap() {
    // Intervals 1, 1, 1, 1.4, 5, 1, 1.6, 1, 1: median 1; 5 and 1.6 are gaps, the other seven last 7.4 s.
    const std::vector<double> time{0, 1, 2, 3, 4.4, 9.4, 10.4, 12, 13, 14};
    const Sampling sampling = examineSampling(time);
    QCOMPARE(sampling.gaps.size(), std::size_t(2));
    QCOMPARE(sampling.gaps[0].at, 4.4);
    QCOMPARE(sampling.gaps[0].length, 5.0);
    VERIFY_NEAR(sampling.rate, 7 / 7.4, 1e-12);
    QCOMPARE(sampling.stretches.size(), std::size_t(3));
    QCOMPARE(sampling.stretches[1].begin, std::size_t(5));
    QCOMPARE(sampling.stretches[1].end, std::size_t(7));
    QCOMPARE(sampling.stretches[2].end, time.size());
    // s of 1, 1, 1, 1.4, 1, 1, 1: mean 7.4/7, s² = (6·(0.4/7)² + (0.4·6/7)²)/6
    const double s = std::sqrt((6 * std::pow(0.4 / 7, 2) + std::pow(2.4 / 7, 2)) / 6);
    VERIFY_NEAR(sampling.jitter, s, 1e-12);
  }

  /// Normal intervals with a standard deviation of 7 % of their mean, seed 3, 20000 of them: the estimate
  /// lies within 3 standard errors, 7 %/√(2n) each; the cut at 1.5 is seven deviations away.
  void jitter() {
    std::mt19937 engine(3);
    std::normal_distribution<double> interval(1e-3, 7e-5);
    std::vector<double> time{0};
    for (int i = 0; i < 20000; ++i) {
      time.push_back(time.back() + interval(engine));
    }
    const Sampling sampling = examineSampling(time);
    QVERIFY(sampling.gaps.empty());
    VERIFY_NEAR(sampling.jitter, 0.07, 3 * 0.07 / 200);
  }

  void refusals() {
    QVERIFY_THROWS_EXCEPTION(std::invalid_argument, examineSampling(std::vector<double>{0, 1}));
    QVERIFY_THROWS_EXCEPTION(std::invalid_argument, examineSampling(std::vector<double>{0, 1, 1}));
    QVERIFY_THROWS_EXCEPTION(std::invalid_argument, examineSampling(std::vector<double>{0, 2, 1}));
  }

  void clipping() {
    QCOMPARE(clippedShare(std::vector<double>{}), 0.0);
    QCOMPARE(clippedShare(std::vector<double>(50, 9807.0)), 0.0);           // constant
    QCOMPARE(clippedShare(std::vector<double>{0, 5, 5, 1, 5, 5, 0}), 0.0);  // runs of two only
    QCOMPARE(clippedShare(std::vector<double>{0, 5, 5, 5, 1, 3, 3, 3, 3, 0}), 0.3);
    QCOMPARE(clippedShare(std::vector<double>{-4, -4, -4, 1, 2, 4, 4, 4, 4, 0}), 0.7);
  }
};

FETTLE_TEST(TestCaptureSampling)
#include "test_capture_sampling.moc"
