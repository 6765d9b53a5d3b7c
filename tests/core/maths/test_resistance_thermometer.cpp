#include <QFile>
#include <QTest>
#include <cmath>

#include "core/maths/resistance_thermometer.h"
#include "tests/support/near.h"
#include "tests/support/test_files.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using fettle::tests::outsideFile;

namespace {

QList<QList<QByteArray>> rowsOf(const QString& path) {
  QFile file(path);
  QList<QList<QByteArray>> rows;
  if (file.open(QIODevice::ReadOnly)) {
    for (const QByteArray& line : file.readAll().split('\n').mid(1)) {
      if (!line.trimmed().isEmpty()) {
        rows.push_back(line.trimmed().split(','));
      }
    }
  }
  return rows;
}

}  // namespace

class TestResistanceThermometer : public QObject {
  Q_OBJECT

 private slots:
  // Published Pt100 table of IEC 60751 (two decimals, so to half of the last).
  void platinumTable_data() {
    QTest::addColumn<double>("temperature");
    QTest::addColumn<double>("ohm");
    const std::pair<double, double> table[] = {{-200, 18.52}, {-160, 35.54}, {-100, 60.26}, {-50, 80.31},
                                               {-10, 96.09},  {0, 100.00},   {10, 103.90},  {25, 109.73},
                                               {100, 138.51}, {200, 175.86}, {300, 212.05}, {400, 247.09},
                                               {500, 280.98}, {600, 313.71}};
    for (const auto& [temperature, ohm] : table) {
      QTest::addRow("%g C", temperature) << temperature << ohm;
    }
  }
  void platinumTable() {
    QFETCH(double, temperature);
    QFETCH(double, ohm);
    VERIFY_NEAR(platinumResistance(100, temperature), ohm, 0.005 + 1e-9);
    VERIFY_NEAR(platinumResistance(1000, temperature), 10 * ohm, 0.05 + 1e-8);
    VERIFY_NEAR(*platinumTemperature(100, platinumResistance(100, temperature)), temperature, 1e-9);
  }

  // Every row of the outside table, whose second column holds the standard's equation to five decimals.
  void wholePlatinumTableWithinAHundredth() {
    const QString path = outsideFile("reference/pt100.csv");
    SKIP_WITHOUT_OUTSIDE_FILE(path);
    const auto rows = rowsOf(path);
    QVERIFY(rows.size() > 80);
    for (const auto& row : rows) {
      const double temperature = row[0].toDouble();
      VERIFY_NEAR(*platinumTemperature(100, row[2].toDouble()), temperature, 0.01);
      if (temperature != -160) {  // misprinted there: 35.34
        VERIFY_NEAR(platinumResistance(100, temperature), row[1].toDouble(), 0.005 + 1e-6);
      }
    }
  }

  void platinumHasNoTemperatureBeyondItsParabola() { QVERIFY(!platinumTemperature(100, 1000)); }

  // By hand: at 25 °C the nominal; B from two rows of a published table (100 kΩ at 25, 5384 Ω at 100 °C):
  // ln(100000/5384)/(1/298.15 − 1/373.15) = 4334.1.
  void betaByTwoPoints() {
    VERIFY_NEAR(betaResistance(100000, 4334.1, 25), 100000, 1e-6);
    VERIFY_NEAR(betaResistance(100000, 4334.1, 100), 5384, 0.5);
    VERIFY_NEAR(*betaTemperature(100000, 4334.1, 5384), 100, 0.003);
    QVERIFY(!betaTemperature(100000, 4334.1, 1e-7));
  }

  // Published table of a 100 kΩ glass bead, B 25/85 4267, and coefficients fitted to it by least squares in
  // SciPy: largest error 0.074 °C. Rows typed from the data sheet.
  void steinhartHartAgainstATable() {
    const SteinhartHart curve{8.103008227e-4, 2.115343576e-4, 7.099115876e-8};
    const std::pair<double, double> table[] = {{-50, 8.743e6}, {0, 353700},  {50, 33490},  {100, 5556},
                                               {150, 1360},    {200, 439.3}, {250, 174.0}, {300, 80.65}};
    for (const auto& [temperature, ohm] : table) {
      VERIFY_NEAR(*curve.temperature(ohm), temperature, 0.075);
      VERIFY_NEAR(*curve.temperature(curve.resistance(temperature)), temperature, 1e-9);
    }
  }
};

FETTLE_TEST(TestResistanceThermometer)
#include "test_resistance_thermometer.moc"
