#include <QFileInfo>
#include <QTest>

#include "core/intake/capture_text.h"
#include "core/intake/file_bytes.h"
#include "core/intake/height_grid.h"
#include "tests/support/test_files.h"
#include "tests/support/test_main.h"

using namespace fettle;
using std::string;

/// Files as a bench brings them, in the forms of several loggers. Expected values: the formulas of
/// tests/data/make_data.py, and what stands in the files, read off by eye.
class TestBenchFiles : public QObject {
  Q_OBJECT

  static string bytes(const char* name) {
    return readFileBytes(fettle::tests::dataFile(name).toStdString()).value_or(string());
  }

  static std::vector<WantedColumn> acceleration() {
    return {{"time_s", "time", "s", true, false, {}},
            {"ax", "acceleration in x", "mm/s2", true, false, {}},
            {"ay", "acceleration in y", "mm/s2", true, false, {}},
            {"az", "acceleration in z", "mm/s2", true, false, {}}};
  }

  static std::vector<WantedColumn> heater() {
    return {{"time_s", "time", "s", true, false, {}},
            {"temp_C", "temperature", "C", true, false, {}},
            {"duty", "duty", "1", false, false, {}},
            {"target_C", "target", "C", false, false, {}}};
  }

 private slots:
  void captures_data() {
    QTest::addColumn<QByteArray>("file");
    QTest::addColumn<bool>("isHeater");
    QTest::addColumn<int>("rows");
    QTest::addColumn<QByteArray>("key");
    QTest::addColumn<double>("second");  // the second value of that column
    QTest::addColumn<double>("endTime");
    const auto row = [](const char* file, bool isHeater, int rows, const char* key, double second,
                        double end) {
      QTest::newRow(file) << QByteArray(file) << isHeater << rows << QByteArray(key) << second << end;
    };
    row("sweep-x.csv", false, 5120, "ay", -44, 5119.0 / 320);
    row("sweep-y-decimal-comma.csv", false, 5120, "ax", 0.0034 * 9806.65, 5119.0 / 320);
    row("sweep-x-gap.txt", false, 5040, "az", 999 * 9.80665, 5119.0 / 320);
    row("hot-end-step.csv", true, 700, "temp_C", 24, 699);
    row("hot-end-hold.csv", true, 600, "target_C", 210, 299.5);
  }
  void captures() {
    QFETCH(QByteArray, file);
    QFETCH(bool, isHeater);
    QFETCH(int, rows);
    QFETCH(QByteArray, key);
    QFETCH(double, second);
    QFETCH(double, endTime);
    const auto capture = readCapture(bytes(file.constData()), isHeater ? heater() : acceleration());
    QVERIFY2(capture.has_value(), capture ? "" : capture.error().sentence.c_str());
    QCOMPARE(capture->rows(), static_cast<std::size_t>(rows));
    QCOMPARE(capture->column(key.toStdString())[1], second);
    QCOMPARE(capture->column("time_s").front(), 0.0);
    QCOMPARE(capture->column("time_s").back(), endTime);
  }

  void dutyIsAFraction() {
    const auto capture = readCapture(bytes("hot-end-step.csv"), heater());
    QVERIFY(capture.has_value());
    const auto& duty = capture->column("duty");
    const auto step = std::find(duty.begin(), duty.end(), 0.4);  // the step to 40 %
    QVERIFY(step != duty.end());
    const auto& time = capture->column("time_s");
    QCOMPARE(time[static_cast<std::size_t>(step - duty.begin())], 30.0);
  }

  void measuredPoints() {
    const auto points = readColumns(bytes("bed-points.csv"), {{"x", "x", "mm", true, false, {}},
                                                              {"y", "y", "mm", true, false, {}},
                                                              {"z", "height", "mm", true, false, {}}});
    QVERIFY2(points.has_value(), points ? "" : points.error().sentence.c_str());
    QCOMPARE(points->find("x")->values.size(), std::size_t(25));
    QCOMPARE(points->find("x")->values[1], 70.0);
    QCOMPARE(points->find("z")->values[1], 0.039);  // 0.0006·70 − 0.0004·20 + 2e-6·50²
  }

  void meltedMasses() {
    const auto steps =
        readColumns(bytes("melt-rate.csv"), {{"flow_mm3_s", "flow", "mm3/s", true, false, {}},
                                             {"delivered", "delivered", "1", false, false, {}},
                                             {"mass_g", "mass", "g", false, false, {}},
                                             {"volume_mm3", "volume", "mm3", false, false, {}}});
    QVERIFY2(steps.has_value(), steps ? "" : steps.error().sentence.c_str());
    QCOMPARE(steps->columns.size(), std::size_t(3));
    QCOMPARE(steps->find("flow_mm3_s")->values[3], 4.0);
    QCOMPARE(steps->find("mass_g")->values[0], 0.728);  // 0.98 · 600 mm³ · 1.24 mg/mm³ − 1 mg
    QCOMPARE(steps->find("volume_mm3")->values[0], 600.0);
  }

  void grids() {
    GridOptions options;
    options.useSuggested = true;
    const auto grid = readGrid(bytes("bed-grid.txt"), options);
    QVERIFY2(grid.has_value(), grid ? "" : grid.error().sentence.c_str());
    QCOMPARE(grid->x, (std::vector<double>{20, 70, 120, 170, 220}));
    QCOMPARE(grid->y, grid->x);
    // The points are the same bed, the front left first; the text of the grid begins with the back.
    const auto points = readColumns(bytes("bed-points.csv"), {{"height", "", "mm", true, false, {}}});
    for (std::size_t i = 0; i < 25; ++i) {
      QCOMPARE(grid->z[i / 5][i % 5], points->find("height")->values[i]);
    }
  }

  void faults_data() {
    QTest::addColumn<QByteArray>("file");
    QTest::addColumn<QByteArray>("says");
    QTest::newRow("backwards") << QByteArray("faulty-backwards.csv")
                               << QByteArray("Line 22: time must run forwards");
    QTest::newRow("binary") << QByteArray("faulty-binary.csv") << QByteArray("This is not a text table");
    QTest::newRow("empty") << QByteArray("faulty-empty.csv") << QByteArray("There is no text to read");
    QTest::newRow("not a number") << QByteArray("faulty-not-a-number.csv")
                                  << QByteArray("Line 14, column 2 (ax): \"nan\"");
    QTest::newRow("ragged") << QByteArray("faulty-ragged.csv") << QByteArray("Line 3 has 3 cells");
    QTest::newRow("words") << QByteArray("faulty-words.csv")
                           << QByteArray("Line 3, column 2 (ax): \"one\"");
  }
  void faults() {
    QFETCH(QByteArray, file);
    QFETCH(QByteArray, says);
    QVERIFY(QFileInfo::exists(fettle::tests::dataFile(file)));
    const auto capture = readCapture(bytes(file.constData()), acceleration());
    QVERIFY(!capture.has_value());
    QVERIFY2(capture.error().sentence.starts_with(says.toStdString()), capture.error().sentence.c_str());
    QVERIFY(capture.error().sentence.ends_with('.'));
    QVERIFY(capture.error().sentence.find(". ") == string::npos);  // one sentence
  }
};

FETTLE_TEST(TestBenchFiles)
#include "test_bench_files.moc"
