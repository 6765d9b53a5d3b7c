#include "core/maths/spectrum.h"

#include <QTest>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>
#include <random>
#include <thread>

#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

namespace {

std::vector<double> whiteNoise(std::size_t count, double deviation, unsigned seed) {
  std::mt19937 engine(seed);
  std::normal_distribution<double> normal(0.0, deviation);
  std::vector<double> samples(count);
  std::generate(samples.begin(), samples.end(), [&] { return normal(engine); });
  return samples;
}

/// |Σ w_j exp(−2πi·bin·j/N)| of the window at a fraction of a bin.
double windowResponse(const std::vector<double>& window, double bin) {
  double real = 0.0;
  double imaginary = 0.0;
  for (std::size_t j = 0; j < window.size(); ++j) {
    const double phase =
        2.0 * std::numbers::pi * bin * static_cast<double>(j) / static_cast<double>(window.size());
    real += window[j] * std::cos(phase);
    imaginary += window[j] * std::sin(phase);
  }
  return std::hypot(real, imaginary);
}

double overlapCorrelation(const std::vector<double>& window, std::size_t step) {
  const double full = std::inner_product(window.begin(), window.end(), window.begin(), 0.0);
  const auto shift = static_cast<std::ptrdiff_t>(step);
  return std::inner_product(window.begin() + shift, window.end(), window.begin(), 0.0) / full;
}

}  // namespace

class TestSpectrum : public QObject {
  Q_OBJECT

 private slots:
  /// Harris 1978, table I: coherent gain 0.50, ENBW 1.50 bins, scalloping 1.42 dB, overlap correlation 16.7
  /// and 65.9 %; more digits computed from the definition with NumPy.
  void hannFigures() {
    const auto window = hannWindow(4096);
    const double sum = std::accumulate(window.begin(), window.end(), 0.0);
    const double squares = std::inner_product(window.begin(), window.end(), window.begin(), 0.0);
    VERIFY_NEAR(sum / 4096.0, 0.5, 1e-12);
    VERIFY_NEAR(4096.0 * squares / (sum * sum), 1.5, 1e-12);
    VERIFY_NEAR(20.0 * std::log10(sum / windowResponse(window, 0.5)), 1.42362, 1e-5);
    // 3 dB and 6 dB points, half of 1.44058 and of 2.00000 bins.
    VERIFY_NEAR(sum / windowResponse(window, 0.72029), std::sqrt(2.0), 1e-4);
    VERIFY_NEAR(sum / windowResponse(window, 1.0), 2.0, 1e-9);
    VERIFY_NEAR(overlapCorrelation(window, 2048), 0.1667, 5e-5);
    VERIFY_NEAR(overlapCorrelation(window, 1024), 0.6592, 5e-5);
  }

  /// Periodic, not symmetric: the sample after the last would be the first again. By definition.
  void hannIsPeriodic() {
    const auto window = hannWindow(8);
    QCOMPARE(window[0], 0.0);
    VERIFY_NEAR(window[4], 1.0, 1e-15);
    VERIFY_NEAR(window[1], window[7], 1e-15);
    QVERIFY(window[7] > 0.1);
  }

  void powersOfTwo() {
    QCOMPARE(nearestPowerOfTwo(0.3), std::size_t{1});
    QCOMPARE(nearestPowerOfTwo(1535.0), std::size_t{1024});
    QCOMPARE(nearestPowerOfTwo(1537.0), std::size_t{2048});
    QCOMPARE(nearestPowerOfTwo(1.28 * 1600.0), std::size_t{2048});
    QCOMPARE(nearestPowerOfTwo(1.28 * 3200.0), std::size_t{4096});
  }

  /// A sine of amplitude A on a bin centre: density A²/(2·ENBW), ENBW = 1.5·fs/N (Heinzel, Rüdiger and
  /// Schilling 2002).
  void sineOnABin() {
    std::vector<double> samples(4000);
    for (std::size_t j = 0; j < samples.size(); ++j) {
      samples[j] = 7.0 + 3.0 * std::sin(2.0 * std::numbers::pi * 125.0 * static_cast<double>(j) / 1000.0);
    }
    const IndexRange all{0, samples.size()};
    const auto result = welchDensity(samples, std::span(&all, 1), {1000.0, 400, 0.5});
    QVERIFY(result.has_value());
    QCOMPARE(result->segments, std::size_t{19});
    QCOMPARE(result->frequency[50], 125.0);
    VERIFY_NEAR(result->density[50], 4.5 / (1.5 * 2.5), 1e-12);
    QVERIFY(result->density[0] < 1e-20);  // the mean is removed
  }

  /// White noise of standard deviation s has the one-sided density 2s²/fs; the mean of it over all
  /// frequencies times the band is the variance (Parseval). Tolerance: 3 standard errors of the variance
  /// of 2^17 samples.
  void whiteNoiseDensity() {
    const auto samples = whiteNoise(1U << 17U, 2.0, 4);
    const IndexRange all{0, samples.size()};
    const auto result = welchDensity(samples, std::span(&all, 1), {1000.0, 1024, 0.5});
    QVERIFY(result.has_value());
    const double mean = std::accumulate(result->density.begin(), result->density.end(), 0.0) / 513.0;
    VERIFY_NEAR(mean / 0.008, 1.0, 0.012);
  }

  /// Segments of two stretches are averaged as if they stood alone; none spans the gap; a trailing part
  /// segment is dropped.
  void stretchesAndPartSegments() {
    auto samples = whiteNoise(3000, 1.0, 5);
    const std::vector<IndexRange> stretches{{0, 1100}, {1900, 3000}};
    const SegmentSettings settings{500.0, 256, 0.75};
    const auto starts = segmentStarts(samples.size(), stretches, settings);
    QVERIFY(starts.has_value());
    QCOMPARE(starts->size(), std::size_t{28});
    QCOMPARE((*starts)[13], std::size_t{832});  // 832 + 256 ≤ 1100, the next would not
    QCOMPARE((*starts)[14], std::size_t{1900});
    const auto both = welchDensity(samples, stretches, settings);
    const auto first = welchDensity(samples, std::span(stretches).first(1), settings);
    const auto second = welchDensity(samples, std::span(stretches).last(1), settings);
    for (std::size_t k = 0; k < both->density.size(); ++k) {
      const double mean = 0.5 * (first->density[k] + second->density[k]);
      VERIFY_NEAR(both->density[k], mean, 1e-12 * mean);
    }
    std::fill(samples.begin() + 1100, samples.begin() + 1900, 1e9);
    QCOMPARE(welchDensity(samples, stretches, settings)->density, both->density);
  }

  void refusals() {
    std::vector<double> samples(100, 1.0);
    const IndexRange all{0, 100};
    const std::span<const IndexRange> one(&all, 1);
    QVERIFY(!welchDensity(samples, one, {0.0, 64, 0.5}));
    QVERIFY(!welchDensity(samples, one, {100.0, 64, 1.0}));
    QVERIFY(!welchDensity(samples, one, {100.0, 1, 0.5}));
    QVERIFY(!welchDensity(samples, one, {100.0, 128, 0.5}));
    const IndexRange beyond{50, 101};
    QVERIFY(!welchDensity(samples, std::span(&beyond, 1), {100.0, 16, 0.5}));
    samples[50] = std::numeric_limits<double>::quiet_NaN();
    QVERIFY(!welchDensity(samples, one, {100.0, 64, 0.5}));
  }

  void cancels() {
    const auto samples = whiteNoise(100000, 1.0, 6);
    const IndexRange all{0, samples.size()};
    std::vector<double> shares;
    const auto untilHalf = [&](double share) {
      shares.push_back(share);
      return share < 0.5;
    };
    const auto result = welchDensity(samples, std::span(&all, 1), {1000.0, 256, 0.5}, untilHalf);
    QVERIFY(!result);
    QCOMPARE(result.error(), std::string(cancelled));
    QVERIFY(std::is_sorted(shares.begin(), shares.end()));
    QVERIFY(shares.size() > 3 && shares.back() >= 0.5 && shares.back() < 0.6);
  }

  /// Several threads plan and transform at once and get the same bits.
  void threads() {
    const auto samples = whiteNoise(20000, 1.0, 7);
    const IndexRange all{0, samples.size()};
    std::vector<std::vector<double>> densities(4);
    std::vector<std::thread> threads;
    for (auto& density : densities) {
      threads.emplace_back([&] {
        for (int i = 0; i < 20; ++i) {
          density = welchDensity(samples, std::span(&all, 1), {1000.0, 512, 0.5})->density;
        }
      });
    }
    for (auto& thread : threads) {
      thread.join();
    }
    for (const auto& density : densities) {
      QCOMPARE(density, densities.front());
    }
  }
};

FETTLE_TEST(TestSpectrum)
#include "test_spectrum.moc"
