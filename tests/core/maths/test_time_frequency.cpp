#include "core/maths/time_frequency.h"

#include <QTest>
#include <cmath>
#include <numbers>

#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

namespace {

struct Sweep {
  std::vector<double> time;
  std::vector<double> samples;
};

/// Sine whose frequency rises by `rate` Hz/s from 10 Hz, sampled at 1000 Hz; `lost` seconds are missing
/// after 6 s.
Sweep sweep(double rate, double lost) {
  Sweep result;
  for (int j = 0; j < 12000; ++j) {
    const double t = j / 1000.0;
    if (t >= 6.0 && t < 6.0 + lost) {
      continue;
    }
    result.time.push_back(t);
    result.samples.push_back(std::sin(2.0 * std::numbers::pi * (10.0 * t + 0.5 * rate * t * t)));
  }
  return result;
}

double strongestFrequency(const TimeFrequencyPicture& picture, Eigen::Index column) {
  Eigen::Index row = 0;
  picture.density.col(column).maxCoeff(&row);
  return picture.frequency[static_cast<std::size_t>(row)];
}

}  // namespace

class TestTimeFrequency : public QObject {
  Q_OBJECT

 private slots:
  /// The ridge of a linear sweep lies on f = 10 + rate·t, by construction; a bin is 1.95 Hz.
  void ridgeFollowsASweep() {
    const Sweep signal = sweep(8.0, 0.0);
    const IndexRange all{0, signal.samples.size()};
    const auto picture = timeFrequencyPicture(signal.time, signal.samples, std::span(&all, 1),
                                              {1000.0, 512, 0.75}, {400, 120.0});
    QVERIFY(picture.has_value());
    QCOMPARE(picture->density.cols(), Eigen::Index{90});
    QCOMPARE(picture->density.rows(), Eigen::Index{62});  // 0 … 119.1 Hz
    for (Eigen::Index column = 0; column < picture->density.cols(); ++column) {
      const double expected = 10.0 + 8.0 * picture->time[static_cast<std::size_t>(column)];
      VERIFY_NEAR(strongestFrequency(*picture, column), expected, 2.0);
    }
  }

  /// Averaging into fewer columns keeps the mean density: it equals Welch's when weighted by segments.
  void fewerColumnsKeepThePower() {
    const Sweep signal = sweep(8.0, 0.0);
    const IndexRange all{0, signal.samples.size()};
    const SegmentSettings settings{1000.0, 512, 0.75};
    const auto picture =
        timeFrequencyPicture(signal.time, signal.samples, std::span(&all, 1), settings, {30, 1e3});
    const auto welch = welchDensity(signal.samples, std::span(&all, 1), settings);
    QCOMPARE(picture->density.cols(), Eigen::Index{30});  // 90 segments, 3 to a column
    const Eigen::VectorXd mean = picture->density.rowwise().mean();
    for (Eigen::Index row = 0; row < mean.size(); ++row) {
      const double expected = welch->density[static_cast<std::size_t>(row)];
      VERIFY_NEAR(mean[row], expected, 1e-12 * expected);
    }
    // Middle of the first three segments: samples 0 … 767.
    VERIFY_NEAR(picture->time.front(), 0.3835, 1e-9);
  }

  /// No column mixes both sides of a gap, and times go on after it.
  void gapsStayGaps() {
    const Sweep signal = sweep(8.0, 2.0);
    const std::vector<IndexRange> stretches{{0, 6000}, {6000, signal.samples.size()}};
    const auto picture =
        timeFrequencyPicture(signal.time, signal.samples, stretches, {1000.0, 512, 0.75}, {12, 1e3});
    QVERIFY(picture.has_value());
    for (std::size_t column = 0; column < picture->time.size(); ++column) {
      const double time = picture->time[column];
      QVERIFY(time < 6.0 || time > 8.0);
      // Up to 7 segments are averaged: 1.3 s, 10 Hz of the sweep.
      VERIFY_NEAR(strongestFrequency(*picture, static_cast<Eigen::Index>(column)) - 10.0, 8.0 * time, 6.0);
    }
  }

  void refusesAndCancels() {
    const Sweep signal = sweep(8.0, 0.0);
    const IndexRange all{0, signal.samples.size()};
    const std::span<const IndexRange> one(&all, 1);
    const SegmentSettings settings{1000.0, 512, 0.75};
    QVERIFY(!timeFrequencyPicture(std::span(signal.time).first(10), signal.samples, one, settings));
    QVERIFY(!timeFrequencyPicture(signal.time, signal.samples, {}, settings));
    const auto result = timeFrequencyPicture(signal.time, signal.samples, one, settings, {},
                                             [](double share) { return share < 0.3; });
    QVERIFY(!result);
    QCOMPARE(result.error(), std::string(cancelled));
  }
};

FETTLE_TEST(TestTimeFrequency)
#include "test_time_frequency.moc"
