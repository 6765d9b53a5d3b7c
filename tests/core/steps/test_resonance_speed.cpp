#include <QElapsedTimer>
#include <QTest>
#include <algorithm>

#include "tests/support/near.h"
#include "tests/support/resonance_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// How long a whole evaluation of a large capture takes.
class TestResonanceSpeed : public QObject, private ResonanceBench {
  Q_OBJECT

 private slots:
  /// 416 000 rows of four columns take about 90 ms. The quickest of five runs within 600 ms, because test
  /// machines are shared; the figures are printed. Other builds evaluate it once, at whatever speed.
  void largeCapture() {
    Shaking large;
    large.rate = 3200;
    large.seconds = 130;
    captures["large"] = sweepOf(twoModes, large);
    QCOMPARE(captures["large"]->rows(), std::size_t(416000));
    Json given = sweepRow("x", "centre", "large");
    given["sweep_s"] = 130;
    qint64 quickest = 0;
    for (int i = 0; i < (isSpeedMeasured ? 5 : 1); ++i) {
      QElapsedTimer clock;
      clock.start();
      const StepResult result = run({{"captures", {given}}});
      const qint64 spent = clock.elapsed();
      qInfo("416 000 rows evaluated in %lld ms", static_cast<long long>(spent));
      VERIFY_NEAR(valueOf(result, "x.mode_1_hz"), 52, 0.7);
      quickest = i == 0 ? spent : std::min(quickest, spent);
    }
    QVERIFY2(!isSpeedMeasured || quickest < 600, qPrintable(QString::number(quickest)));
  }
};

FETTLE_TEST(TestResonanceSpeed)
#include "test_resonance_speed.moc"
