#include <QFile>
#include <QTemporaryDir>
#include <QTest>
#include <QtWidgets>
#include <optional>

#include "core/steps/catalogue.h"
#include "tests/support/test_main.h"
#include "tests/ui/bench/bench_window.h"
#include "ui/bench/main_window.h"
#include "ui/bench/step_page.h"

using namespace fettle;
using namespace fettle::ui;

namespace {

constexpr auto newMachine =
    R"({"fettle": 1, "machine": {"name": "Rig", "motion": "cartesian", "hot_end_max_C": 285,
  "x.drive": "belt", "x.pitch_mm": 2, "x.teeth": 20, "x.step_angle_deg": 1.8, "x.microsteps": 16,
  "as_found": {"x.steps_per_mm": 80, "feed_steps_per_mm": 400}},
  "sessions": [{"date": "2026-03-02T09:00:00", "operator": "A B", "reason": "test"}]})";

}  // namespace

/// Every step that needs no file, from the first key to the accepted value, by the keyboard alone.
class TestKeyboard : public QObject {
  Q_OBJECT

  QTemporaryDir m_folder;
  std::optional<tests::ImportedMachine> m_machine;
  std::unique_ptr<MainWindow> m_window;

  /// Types: "|" is Enter, ">" Tab, the rest as it stands.
  void type(const QString& keys) {
    for (const QChar key : keys) {
      QWidget* at = QApplication::focusWidget();
      QVERIFY(at);
      if (key == '|') {
        QTest::keyClick(at, Qt::Key_Return);
      } else if (key == '>') {
        QTest::keyClick(at, Qt::Key_Tab);
      } else {
        QTest::keyClick(at, key.toLatin1());
      }
      QCoreApplication::processEvents();
    }
  }
  const StepRun* run() { return m_window->page().run(); }

 private slots:
  void initTestCase() {
    QFile text(m_folder.filePath("new.json"));
    QVERIFY(text.open(QIODevice::WriteOnly));
    text.write(newMachine);
    text.close();
    m_machine.emplace(text.fileName());
    m_window = tests::benchWindow(*m_machine);
    QVERIFY(m_window);
    m_window->chooseStep(catalogue().front().key);
  }
  void cleanupTestCase() { m_window.reset(); }

  void fromTheFirstKeyToTheAcceptedValue_data() {
    QTest::addColumn<QString>("keys");
    QTest::addColumn<QString>("result");
    QTest::addColumn<double>("value");
    // Expected: counts of the keys typed, or by hand.
    QTest::newRow("axis-travel")
        << "x|20|1|20.0|x|60|1|60.1|x|100|1|100.2|x|20|-1|20.0|x|60|-1|60.1|x|100|-1|100.2|"
        << "x.travel_ratio" << 1.0025;
    QTest::newRow("filament-feed") << "100|150|51|2|100|150|51|2|100|150|51|2|"
                                   << "drawn_ratio" << 0.99;
    QTest::newRow("mechanics") << QString(11, ' ') << "checks_done" << 11.0;
    QTest::newRow("safety") << QString(10, ' ') << "open_items" << 0.0;
    QTest::newRow("power-up") << "emergency stop|front|cuts|cuts|y|sensor|bed|fault|fault|y|>21>"
                              << "devices_wrong" << 0.0;
    QTest::newRow("config-review") << "Steps|80|Steps per mm x|"
                                   << "x.steps_per_mm_ratio" << 1.0;
    QTest::newRow("temperature-sensor") << "h>100|100|200|200|"
                                        << "hot_end.slope" << 1.0;
    QTest::newRow("heater-control") << "h>s>>>>>>240>>>>>>>500>140>8>"
                                    << "hot_end.gain_C" << 500.0;
    QTest::newRow("belt-tension") << "300>8.4>left|100|"
                                  << "left.tension_N" << 30.24;
  }
  void fromTheFirstKeyToTheAcceptedValue() {
    QFETCH(QString, keys);
    QFETCH(QString, result);
    QFETCH(double, value);
    const std::string step = QTest::currentDataTag();
    const auto wayTo = findStep(step) < m_window->page().step() ? Qt::Key_PageUp : Qt::Key_PageDown;
    for (std::size_t i = 0; i < catalogue().size() && m_window->page().step()->key != step; ++i) {
      QTest::keyClick(m_window.get(), wayTo, Qt::ControlModifier);
      QCoreApplication::processEvents();
    }
    QCOMPARE(QString::fromStdString(m_window->page().step()->key), QString::fromStdString(step));
    QTest::keyClick(m_window.get(), Qt::Key_E, Qt::ControlModifier);
    type(keys);
    QCoreApplication::processEvents();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return, Qt::ControlModifier);
    QCoreApplication::processEvents();
    QVERIFY(run());
    QVERIFY2(run()->accepted(), qPrintable(QString::fromStdString(run()->inputs.dump())));
    const Quantity* quantity = m_window->page().evaluated()->result.quantity(result.toStdString());
    QVERIFY(quantity);
    QVERIFY2(std::abs(quantity->value - value) < 1e-9,
             qPrintable(QString::number(quantity->value, 'g', 12)));
  }
};

FETTLE_TEST(TestKeyboard)
#include "test_keyboard.moc"
