#include <QTest>
#include <cmath>

#include "core/steps/catalogue.h"
#include "tests/support/files_in.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// The captures of the demo machine through file, intake and step. True modes: those they were made with,
/// in demo-sessions/make_captures.cpp.
class TestResonanceDemo : public QObject {
  Q_OBJECT

  StepResult m_result;

  static Json sweep(const char* axis, const char* position, const char* file) {
    return {{"axis", axis},       {"position", position}, {"sweep_from_hz", 5},
            {"sweep_to_hz", 115}, {"sweep_s", 12},        {"capture", {{"file", file}}}};
  }

 private slots:
  void initTestCase() {
    IntakeFiles files = filesIn(FETTLE_SOURCE_DIR "/demo-sessions/wagtail/captures");
    const Json inputs{{"captures",
                       {sweep("x", "centre", "x-centre.csv"), sweep("x", "front", "x-front.csv"),
                        sweep("y", "centre", "y-centre.csv")}}};
    const auto result = findStep("resonance")->evaluate(inputs, {}, files);
    QVERIFY2(result.has_value(), result ? "" : result.error().c_str());
    m_result = *result;
  }

  void modes_data() {
    QTest::addColumn<QString>("mode");
    QTest::addColumn<double>("frequency");
    QTest::addColumn<double>("damping");
    QTest::newRow("x centre 1") << "x.centre.mode_1" << 47.3 << 0.061;
    QTest::newRow("x centre 2") << "x.centre.mode_2" << 86.5 << 0.045;
    QTest::newRow("x front 1") << "x.front.mode_1" << 45.1 << 0.064;
    QTest::newRow("x front 2") << "x.front.mode_2" << 83.2 << 0.047;
    QTest::newRow("y centre 1") << "y.centre.mode_1" << 33.8 << 0.075;
  }
  void modes() {
    QFETCH(QString, mode);
    QFETCH(double, frequency);
    QFETCH(double, damping);
    const Quantity* hz = m_result.quantity(mode.toStdString() + "_hz");
    const Quantity* zeta = m_result.quantity(mode.toStdString() + "_damping");
    QVERIFY(hz && zeta);
    VERIFY_NEAR(hz->value, frequency, 0.7);
    VERIFY_NEAR(zeta->value, damping, 0.015);
  }

  void nothingIsWrongWithThem() {
    for (const Finding& finding : m_result.findings) {
      QFAIL(finding.text.c_str());
    }
    QCOMPARE(m_result.settings.size(), std::size_t(6));
  }
};

FETTLE_TEST(TestResonanceDemo)
#include "test_resonance_demo.moc"
