#include "core/maths/peaks.h"

#include <QTest>

#include "tests/support/test_main.h"

using namespace fettle::maths;

class TestPeaks : public QObject {
  Q_OBJECT

 private slots:
  /// Expected: scipy.signal.find_peaks and peak_prominences, SciPy 1.10.1, on the same numbers.
  void plateausAndProminences() {
    const std::vector<double> values{0, 2, 1, 3, 3, 3, 0, 1, 1, 2, 5, 5, 4, 5, 5, 1, 4, 4};
    const auto peaks = findPeaks(values);
    const std::vector<std::size_t> indices{1, 4, 10, 13};
    const std::vector<double> prominences{1, 3, 4, 4};
    QCOMPARE(peaks.size(), indices.size());
    for (std::size_t i = 0; i < peaks.size(); ++i) {
      QCOMPARE(peaks[i].index, indices[i]);
      QCOMPARE(peaks[i].height, values[indices[i]]);
      QCOMPARE(peaks[i].prominence, prominences[i]);
    }
  }

  /// By definition: ends and plateaus that meet an end never count.
  void nothingToFind() {
    QVERIFY(findPeaks({}).empty());
    QVERIFY(findPeaks(std::vector<double>{1, 2}).empty());
    QVERIFY(findPeaks(std::vector<double>{1, 2, 3}).empty());
    QVERIFY(findPeaks(std::vector<double>{3, 2, 1}).empty());
    QVERIFY(findPeaks(std::vector<double>{1, 2, 2}).empty());
    QVERIFY(findPeaks(std::vector<double>{2, 2, 1}).empty());
    QVERIFY(findPeaks(std::vector<double>{2, 2, 2}).empty());
  }
};

FETTLE_TEST(TestPeaks)
#include "test_peaks.moc"
