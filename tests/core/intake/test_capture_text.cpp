#include <QTest>

#include "core/intake/capture_text.h"
#include "tests/support/test_main.h"

using namespace fettle;
using std::string;

/// Expected values: what the small texts say, by inspection.
class TestCaptureText : public QObject {
  Q_OBJECT

  std::vector<WantedColumn> m_wanted = {{"time_s", "time", "s", true, false, {}},
                                        {"temp_C", "temperature", "C", true, false, {}},
                                        {"target_C", "target", "C", false, false, {}}};

  string refusalOf(const string& text, std::size_t fewestRows = 2) const {
    const auto capture = readCapture(text, m_wanted, {}, {"time_s", fewestRows});
    return capture ? string() : capture.error().sentence;
  }

 private slots:
  void timeBeginsAtZero() {
    const auto capture = readCapture("temp,time [us]\n20,71000011\n21,71000606\n22,71001256\n", m_wanted);
    QVERIFY2(capture.has_value(), capture ? "" : capture.error().sentence.c_str());
    QCOMPARE(capture->rows(), std::size_t(3));
    QVERIFY(!capture->has("target_C"));
    const auto& time = capture->column("time_s");
    QCOMPARE(time[0], 0.0);
    // A double near 71 s resolves 1.4e-14 s; the tolerance is two of those.
    QVERIFY(std::abs(time[1] - 0.000595) < 3e-14);
    QVERIFY(std::abs(time[2] - 0.001245) < 3e-14);
    QCOMPARE(capture->column("temp_C"), (std::vector<double>{20, 21, 22}));
  }

  void clockTimesCrossMidnight() {
    const auto capture = readCapture("clock,temp\n23:59:58.5,20\n00:00:00.5,21\n00:00:02,22\n", m_wanted);
    QVERIFY(capture.has_value());
    QCOMPARE(capture->column("time_s"), (std::vector<double>{0, 2, 3.5}));
  }

  void refusesTimeThatDoesNotRise() {
    QCOMPARE(
        refusalOf("time_s,temp\n0,20\n# note\n1,21\n0.5,22\n"),
        string("Line 5: time must run forwards, but 0.5 s follows 1 s; each row must be later than the one "
               "before."));
    QCOMPARE(
        refusalOf("time_s,temp\n0,20\n1,21\n1,22\n"),
        string("Line 4: time must run forwards, but 1 s follows 1 s; each row must be later than the one "
               "before."));
    QVERIFY(refusalOf("clock,temp\n10:00:02,20\n10:00:01,21\n").find("Line 3") == 0);
  }

  void refusesTooFewRows() {
    QCOMPARE(refusalOf("time_s,temp\n0,20\n"), string("The capture has 1 rows; at least 2 are needed."));
    QCOMPARE(refusalOf("time_s,temp\n0,20\n1,20\n2,20\n", 4),
             string("The capture has 3 rows; at least 4 are needed."));
  }

  void refusesACaptureWithoutTime() {
    QCOMPARE(makeCapture({}).error().sentence, string("A capture needs the column time_s."));
  }
};

FETTLE_TEST(TestCaptureText)
#include "test_capture_text.moc"
