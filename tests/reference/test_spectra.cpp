#include <QFile>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <random>

#include "core/maths/peaks.h"
#include "core/maths/spectrum.h"
#include "tests/reference/scipy.h"
#include "tests/support/near.h"
#include "tests/support/test_files.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using namespace fettle::tests;

namespace {

constexpr double pi = std::numbers::pi;

const QString welchProgram = QStringLiteral(R"(
from scipy.signal import welch
f, p = welch(data['samples'], data['rate'], window='hann', nperseg=data['length'], noverlap=data['shared'],
             detrend='constant', scaling='density')
result = {'frequency': f.tolist(), 'density': p.tolist()}
)");

const QString peaksProgram = QStringLiteral(R"(
from scipy.signal import find_peaks, peak_prominences
i, _ = find_peaks(data['values'])
result = {'index': i.tolist(), 'prominence': peak_prominences(data['values'], i)[0].tolist()}
)");

/// 1000 samples that any program can make: two sines, a saw tooth of all thousandths, an offset.
std::vector<double> madeSignal() {
  std::vector<double> samples(1000);
  for (std::size_t j = 0; j < samples.size(); ++j) {
    const auto t = static_cast<double>(j);
    samples[j] =
        std::sin(0.3 * t) + 0.5 * std::cos(1.1 * t) + static_cast<double>((j * 7919) % 1000) / 1000.0 + 3.0;
  }
  return samples;
}

PowerDensity welch(std::span<const double> samples, const SegmentSettings& settings) {
  const IndexRange all{0, samples.size()};
  return welchDensity(samples, std::span(&all, 1), settings).value();
}

/// SciPy's density of the same samples.
std::optional<QJsonObject> scipyWelch(std::span<const double> samples, const SegmentSettings& settings) {
  return runScipy(welchProgram,
                  {{"samples", toJson(samples)},
                   {"rate", settings.sampleRate},
                   {"length", static_cast<int>(settings.length)},
                   {"shared", static_cast<int>(settings.overlap * static_cast<double>(settings.length))}});
}

/// Largest relative difference to SciPy's answer, 1 when it has other bins; a bin that is nothing but
/// rounding of the largest counts against that.
double differenceToScipy(const QJsonObject& answer, const PowerDensity& result, double sampleRate) {
  const auto frequency = numbersOf(answer["frequency"]), density = numbersOf(answer["density"]);
  if (frequency.size() != result.frequency.size() || density.size() != result.density.size()) {
    return 1.0;
  }
  const double least = 1e-16 * *std::max_element(result.density.begin(), result.density.end());
  double largest = 0.0;
  for (std::size_t k = 0; k < density.size(); ++k) {
    largest = std::max(largest, std::abs(result.frequency[k] - frequency[k]) / sampleRate);
    largest = std::max(largest, std::abs(result.density[k] - density[k]) / std::max(density[k], least));
  }
  return largest;
}

/// Test signal of Heinzel, Rüdiger and Schilling 2002, section 13: fs 10 kHz, two sines, rounded to 1 mV.
std::vector<double> heinzelSignal() {
  std::vector<double> samples(1000000);
  for (std::size_t j = 0; j < samples.size(); ++j) {
    const double t = static_cast<double>(j) / 10000.0;
    const double u =
        2.82842712474619 * std::sin(2.0 * pi * 1234.0 * t) + std::sin(2.0 * pi * 2500.2157 * t);
    samples[j] = std::floor(u / 1e-3 + 0.5) * 1e-3;
  }
  return samples;
}

}  // namespace

/// Spectra and peaks against SciPy and the literature.
class TestSpectra : public QObject {
  Q_OBJECT

 private slots:
  /// Single bins of scipy.signal.welch (SciPy 1.10.1), stored; even and odd lengths, two overlaps.
  void storedWelch() {
    struct Row {
      std::size_t length;
      double overlap;
      std::vector<std::pair<std::size_t, double>> bins;
    };
    const std::vector<Row> table{{256,
                                  0.5,
                                  {{0, 2.3325358196414486e-05},
                                   {1, 1.890466590295909e-05},
                                   {12, 0.0797766020490895},
                                   {45, 0.02041372059806413},
                                   {100, 1.4167371177047178e-06},
                                   {128, 7.763640887271732e-07}}},
                                 {256,
                                  0.75,
                                  {{0, 2.454659134712416e-05},
                                   {1, 1.6472172284013096e-05},
                                   {12, 0.07978723326458308},
                                   {45, 0.02041230242029413},
                                   {100, 1.4273613319285536e-06},
                                   {128, 7.806447991127063e-07}}},
                                 {255,
                                  0.5,
                                  {{0, 1.6723045331405634e-05},
                                   {1, 1.587874013742981e-05},
                                   {12, 0.08145202801393689},
                                   {45, 0.0179804410736748},
                                   {100, 1.3547636203523935e-06},
                                   {127, 1.5054008099214504e-06}}}};
    for (const Row& row : table) {
      const PowerDensity result = welch(madeSignal(), {1000.0, row.length, row.overlap});
      for (const auto& [bin, expected] : row.bins) {
        VERIFY_NEAR(result.density[bin] / expected, 1.0, 1e-9);
      }
    }
  }

  void liveWelch() {
    std::mt19937 engine(11);
    std::normal_distribution<double> normal(9810.0, 50.0);
    std::vector<double> noise(20011);
    std::generate(noise.begin(), noise.end(), [&] { return normal(engine); });
    for (const auto& [samples, settings] : {std::pair{noise, SegmentSettings{1600.0, 2048, 0.75}},
                                            {noise, {812.5, 999, 0.25}},
                                            {madeSignal(), {3333.3, 100, 0.5}}}) {
      const auto answer = scipyWelch(samples, settings);
      SKIP_WITHOUT_SCIPY(answer);
      VERIFY_NEAR(differenceToScipy(*answer, welch(samples, settings), settings.sampleRate), 0, 1e-9);
    }
  }

  /// A capture in the form that benches bring.
  void liveWelchOfACapture() {
    QFile file(dataFile("sweep-x.csv"));
    QVERIFY(file.open(QIODevice::ReadOnly));
    file.readLine();
    std::vector<double> samples;
    while (!file.atEnd()) {
      const auto words = file.readLine().trimmed().split(',');
      QCOMPARE(words.size(), qsizetype{4});
      samples.push_back(words[1].toDouble());
    }
    QCOMPARE(samples.size(), std::size_t{5120});
    const SegmentSettings settings{250.0, 512, 0.75};
    const auto answer = scipyWelch(samples, settings);
    SKIP_WITHOUT_SCIPY(answer);
    VERIFY_NEAR(differenceToScipy(*answer, welch(samples, settings), settings.sampleRate), 0, 1e-9);
  }

  /// Heinzel, Rüdiger and Schilling 2002, section 13: 2 V rms at 1234 Hz, noise floor of the rounding
  /// 1e-3/√(6 fs) = 4.0825e-6 V/√Hz. A line's power is its density summed over ±3 bins: 2 V within 0.01 %
  /// (1.99994 by SciPy). The floor's estimate over 100 bins of 487 averages scatters by 0.3 %.
  void heinzel() {
    const auto samples = heinzelSignal();
    const PowerDensity result = welch(samples, {10000.0, 4096, 0.5});
    const double bin = 10000.0 / 4096.0;
    const auto line = [&](double frequency) {
      const auto centre = static_cast<std::ptrdiff_t>(std::lround(frequency / bin));
      const auto begin = result.density.begin() + centre - 3;
      return std::sqrt(std::accumulate(begin, begin + 7, 0.0) * bin);
    };
    VERIFY_NEAR(line(1234.0), 2.0, 2e-4);
    VERIFY_NEAR(line(2500.2157), std::sqrt(0.5), 2e-4);
    double sum = 0.0;
    int count = 0;
    for (std::size_t k = 0; k < result.density.size(); ++k) {
      if (result.frequency[k] >= 3200.0 && result.frequency[k] <= 4200.0) {
        sum += result.density[k];
        ++count;
      }
    }
    VERIFY_NEAR(std::sqrt(sum / count) / 4.0825e-6, 1.0, 0.003);
    // Reading of the peak with this bin offset: 1.756 V (SciPy).
    const double peak = result.density[static_cast<std::size_t>(std::lround(1234.0 / bin))];
    VERIFY_NEAR(std::sqrt(peak * 1.5 * bin), 1.756, 1e-3);
  }

  /// Indices and prominences of scipy.signal.find_peaks: rounded sines and a saw tooth, full of plateaus.
  void livePeaks() {
    std::mt19937 engine(12);
    std::uniform_int_distribution<int> steps(0, 4);
    std::vector<double> values;
    for (int k = 0; k < 9000; ++k) {
      values.push_back(std::round(10.0 * std::sin(0.037 * k) + 7.0 * std::sin(0.19 * k)) + steps(engine));
    }
    const auto answer = runScipy(peaksProgram, {{"values", toJson(values)}});
    SKIP_WITHOUT_SCIPY(answer);
    const auto index = numbersOf(answer->value("index"));
    const auto prominence = numbersOf(answer->value("prominence"));
    const auto peaks = findPeaks(values);
    QCOMPARE(peaks.size(), index.size());
    QVERIFY(peaks.size() > 1000);
    for (std::size_t i = 0; i < peaks.size(); ++i) {
      QCOMPARE(static_cast<double>(peaks[i].index), index[i]);
      QCOMPARE(peaks[i].prominence, prominence.at(i));
    }
  }
};

FETTLE_TEST(TestSpectra)
#include "test_spectra.moc"
