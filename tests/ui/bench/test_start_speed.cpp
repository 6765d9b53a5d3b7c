#include <QElapsedTimer>
#include <QProcess>
#include <QTemporaryDir>
#include <QTest>
#include <algorithm>
#include <vector>

#include "tests/support/test_main.h"

/// From the start of the program to the first painted demo machine, offscreen, its files in the cache.
class TestStartSpeed : public QObject {
  Q_OBJECT

 private slots:
  void demoMachineIsPainted() {
#if !defined(NDEBUG) || defined(__SANITIZE_ADDRESS__)
    QSKIP("Speed is only measured in builds with optimization and without sanitizers.");
#endif
    const QTemporaryDir folder;
    const QString file = folder.filePath("demo.fettle");
    QCOMPARE(QProcess::execute(FETTLE_BATCH,
                               {"import", FETTLE_SOURCE_DIR "/demo-sessions/wagtail/wagtail.json", file}),
             0);
    std::vector<qint64> times;
    for (int i = 0; i < 5; ++i) {
      QElapsedTimer clock;
      clock.start();
      QCOMPARE(QProcess::execute(FETTLE_DESKTOP, {"--until-painted", file}), 0);
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
