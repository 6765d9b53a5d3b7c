#include <QElapsedTimer>
#include <QProcess>
#include <QTest>
#include <algorithm>
#include <vector>

#include "tests/support/imported_machine.h"
#include "tests/support/test_main.h"

/// From the start of the program to the first painted demo machine, offscreen, its files in the cache.
class TestStartSpeed : public QObject {
  Q_OBJECT

 private slots:
  void demoMachineIsPainted() {
    FETTLE_SPEED_ONLY()
    const fettle::tests::ImportedMachine machine;
    QVERIFY(machine.isMade());
    std::vector<qint64> times;
    for (int i = 0; i < 5; ++i) {
      QElapsedTimer clock;
      clock.start();
      QCOMPARE(QProcess::execute(FETTLE_DESKTOP, {"--until-painted", machine.file()}), 0);
      times.push_back(clock.elapsed());
    }
    std::sort(times.begin(), times.end());
    qInfo("start to painted demo machine: median %lld ms, quickest %lld ms", times[2], times[0]);
    // The aim is 400 ms on a machine that does nothing else; a busy one may take twice that.
    QVERIFY2(times[0] < 800, qPrintable(QString::number(times[0])));
  }
};

FETTLE_TEST(TestStartSpeed)
#include "test_start_speed.moc"
