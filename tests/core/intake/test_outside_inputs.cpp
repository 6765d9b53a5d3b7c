#include <QDir>
#include <QFileInfo>
#include <QTest>

#include "core/intake/capture_text.h"
#include "core/intake/file_bytes.h"
#include "core/intake/height_grid.h"
#include "tests/support/test_files.h"
#include "tests/support/test_main.h"

using namespace fettle;
using std::string;

/// Files as a bench brings them, of an independent simulation that is no part of the project; skipped where
/// they are not. Those of tests/data are read in test_bench_files. Expected values: read off the files by
/// eye, and the truths told in the README beside them.
class TestOutsideInputs : public QObject {
  Q_OBJECT

  QDir m_folder;

  string bytes(const char* name) const {
    return readFileBytes(m_folder.filePath(name).toStdString()).value_or(string());
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
  void initTestCase() {
    const QString folder = fettle::tests::outsideFile("inputs");
    SKIP_WITHOUT_OUTSIDE_FILE(folder);
    m_folder.setPath(folder);
  }

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
    row("sweep-x-centre.csv", false, 48000, "ay", -92.6, 29.999372);
    row("sweep-y-centre-decimal-comma.csv", false, 48000, "ax", 0.00971 * 9806.65, 29.999369);
    row("sweep-x-front-gap.txt", false, 31600, "az", 975 * 9.80665, 19.999370);
    row("clipped.csv", false, 4000, "ax", 14079.1, 2.499375);
    row("hotend-step.csv", true, 1400, "temp_C", 23.69, 699.5);
    row("hotend-hold.csv", true, 900, "target_C", 215, 449.5);
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
    const auto capture = readCapture(bytes("hotend-step.csv"), heater());
    QVERIFY(capture.has_value());
    const auto& duty = capture->column("duty");
    const auto step = std::find(duty.begin(), duty.end(), 0.42);  // the step to 42 %
    QVERIFY(step != duty.end());
    const auto& time = capture->column("time_s");
    QCOMPARE(time[static_cast<std::size_t>(step - duty.begin())], 20.0);
  }

  void measuredPoints() {
    const auto points = readColumns(bytes("bed-points.csv"), {{"x", "x", "mm", true, false, {}},
                                                              {"y", "y", "mm", true, false, {}},
                                                              {"z", "height", "mm", true, false, {}}});
    QVERIFY2(points.has_value(), points ? "" : points.error().sentence.c_str());
    QCOMPARE(points->find("x")->values.size(), std::size_t(36));
    QCOMPARE(points->find("x")->values[1], 69.0);
    QCOMPARE(points->find("z")->values[1], -0.034);
  }

  void meltedMasses() {
    const auto steps =
        readColumns(bytes("melt-rate-pla.csv"), {{"flow_mm3_s", "flow", "mm3/s", true, false, {}},
                                                 {"delivered", "delivered", "1", false, false, {}},
                                                 {"mass_g", "mass", "g", false, false, {}},
                                                 {"volume_mm3", "volume", "mm3", false, false, {}}});
    QVERIFY2(steps.has_value(), steps ? "" : steps.error().sentence.c_str());
    QCOMPARE(steps->columns.size(), std::size_t(3));
    QCOMPARE(steps->find("flow_mm3_s")->values[2], 4.0);
    QCOMPARE(steps->find("mass_g")->values[0], 0.738);
    QCOMPARE(steps->find("volume_mm3")->values[0], 600.0);
  }

  void grids() {
    GridOptions options;
    options.useSuggested = true;
    for (const char* file : {"bed-grid-as-found.txt", "bed-grid-after-correction.txt"}) {
      const auto grid = readGrid(bytes(file), options);
      QVERIFY2(grid.has_value(), grid ? "" : grid.error().sentence.c_str());
      QCOMPARE(grid->x, (std::vector<double>{15, 69, 123, 177, 231, 285}));
      QCOMPARE(grid->y, grid->x);
      QCOMPARE(grid->z.front().front(), -0.024);  // front left stands in the last line
      QCOMPARE(grid->z.back().front(), -0.106);
    }
    // The grid after correction and the points are the same bed.
    const auto grid = readGrid(bytes("bed-grid-after-correction.txt"), options);
    const auto points = readColumns(bytes("bed-points.csv"), {{"height", "", "mm", true, false, {}}});
    for (std::size_t i = 0; i < 36; ++i) {
      QCOMPARE(grid->z[i / 6][i % 6], points->find("height")->values[i]);
    }
  }

  void faults_data() {
    QTest::addColumn<QByteArray>("file");
    QTest::addColumn<QByteArray>("says");
    QTest::newRow("backwards") << QByteArray("faulty-backwards.csv")
                               << QByteArray("Line 502: time must run forwards");
    QTest::newRow("binary") << QByteArray("faulty-binary.csv") << QByteArray("This is not a text table");
    QTest::newRow("empty") << QByteArray("faulty-empty.csv") << QByteArray("There is no text to read");
    QTest::newRow("not a number") << QByteArray("faulty-nan.csv")
                                  << QByteArray("Line 42, column 2 (ax): \"nan\"");
    QTest::newRow("ragged") << QByteArray("faulty-ragged.csv") << QByteArray("Line 3 has 3 cells");
    QTest::newRow("words") << QByteArray("faulty-text.csv") << QByteArray("Line 3, column 2 (ax): \"one\"");
  }
  void faults() {
    QFETCH(QByteArray, file);
    QFETCH(QByteArray, says);
    QVERIFY(QFileInfo::exists(m_folder.filePath(file)));
    const auto capture = readCapture(bytes(file.constData()), acceleration());
    QVERIFY(!capture.has_value());
    QVERIFY2(capture.error().sentence.starts_with(says.toStdString()), capture.error().sentence.c_str());
    QVERIFY(capture.error().sentence.ends_with('.'));
    QVERIFY(capture.error().sentence.find(". ") == string::npos);  // one sentence
  }
};

FETTLE_TEST(TestOutsideInputs)
#include "test_outside_inputs.moc"
