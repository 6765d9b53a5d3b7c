#include <QTest>

#include "core/history/evaluation.h"
#include "tests/core/store/store_bench.h"
#include "tests/support/test_files.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// The invented demo machine as a program of format 1 wrote it, with a sensor turned round, a graded piece,
/// an override and a changed tolerance added; compressed by zlib.
void writeFormat1(const std::string& path) {
  QFile file(dataFile("format-1.fettle.z"));
  QVERIFY(file.open(QIODevice::ReadOnly));
  writeBytes(path, qUncompress(file.readAll()).toStdString());
}

const StepRun* lastOf(const History& history, const std::string& step, bool accepted) {
  const StepRun* last = nullptr;
  for (const auto& run : history.runs) {
    last = run.step == step && run.accepted() == accepted ? &run : last;
  }
  return last;
}

std::optional<double> signedValue(const StepRun& run, const std::string& id) {
  for (const auto& quantity : run.signedResult.at("quantities")) {
    if (quantity.at("id") == id) {
      return quantity.at("value").get<double>();
    }
  }
  return std::nullopt;
}

}  // namespace

/// A file of format 1 comes to format 2 on a copy. Expected: what sqlite3 shows in the old file.
class TestFormat1 : public QObject {
  Q_OBJECT

  Folder m_folder;
  std::string m_path = m_folder.path("old.fettle");
  std::unique_ptr<MachineFile> m_file;

  const History& history() const { return m_file->history(); }

 private slots:
  void initTestCase() {
    writeFormat1(m_path);
    OPENED(file, MachineFile::open(m_path));
    m_file = std::move(file);
    QCOMPARE(m_file->readOnly(), ReadOnlyReason::none);
  }

  void keepsTheOldFile() {
    QCOMPARE(askSql(m_path, "PRAGMA user_version"), std::string("2"));
    const std::string kept = m_path + ".before-version-2";
    QCOMPARE(askSql(kept, "PRAGMA user_version"), std::string("1"));
    QCOMPARE(askSql(kept, "SELECT count(*) FROM step_runs"), std::string("22"));
    QCOMPARE(askSql(m_path, "SELECT count(*) FROM sqlite_schema WHERE name='adoptions'"), std::string("0"));
  }

  void keepsTheRecords() {
    QCOMPARE(history().sessions.size(), std::size_t{2});
    QCOMPARE(history().runs.size(), std::size_t{22});
    QCOMPARE(history().changes.size(), std::size_t{2});
    QCOMPARE(history().machine.sheet.at("nozzle_mm").get<double>(), 0.4);
    QCOMPARE(history().machine.asFound.at("probe_offset_x").value.number, std::optional(-23.4));
    QCOMPARE(history().machine.tolerances.at("bed-shape.flatness_mz").high, std::optional(0.3));
    QCOMPARE(history().machine.instruments.front().name, std::string("caliper, 150 mm"));
    QCOMPARE(history().marks.size(), std::size_t{1});
    QCOMPARE(history().marks[0].kind, StepMark::Kind::overridden);
    QCOMPARE(history().marks[0].reason, std::string("bench supply, no mains"));
    const std::string adoptions =
        askSql(m_path + ".before-version-2", "SELECT count(*) || ' ' || sum(number) FROM adoptions");
    std::size_t count = 0;
    double sum = 0;
    for (const auto& run : history().runs) {
      for (const auto& adoption : run.adopted) {
        ++count;
        sum += adoption.value.number.value_or(0);
        QVERIFY(adoption.proposed == adoption.value);
      }
    }
    QVERIFY(count > 0);
    const QStringList parts = QString::fromStdString(adoptions).split(' ');
    QCOMPARE(count, parts[0].toULongLong());
    QVERIFY(std::abs(sum - parts[1].toDouble()) < 1e-9 * std::abs(sum));
  }

  void renamesWhatHasAnotherName() {
    const StepRun* turned = lastOf(history(), "resonance", false);
    QVERIFY(turned);
    QCOMPARE(turned->inputs["captures"][0]["sensor_y"].get<std::string>(), std::string("ay_reversed"));
    const Json& graded = lastOf(history(), "melt-rate", true)->inputs["graded"];
    // Bad at 57 mm with stairs of 5 mm: twelve stairs, 60 mm; 4 + 0.2 · 60 = 16 mm³/s at the top.
    QCOMPARE(graded["stairs"].get<double>(), 12.0);
    QCOMPARE(graded["height_mm"].get<double>(), 60.0);
    QCOMPARE(graded["top_value"].get<double>(), 16.0);
    QVERIFY(!graded.contains("value_per_mm") && !graded.contains("stair_mm"));
  }

  /// As signed: 14.4 mm³/s, which that program made of the graded piece.
  void keepsWhatWasSigned() {
    const StepRun* melt = lastOf(history(), "melt-rate", true);
    QCOMPARE(signedValue(*melt, "flow_limit"), std::optional(14.4));
    for (const auto& run : history().runs) {
      QCOMPARE(run.signedResult.empty(), !run.accepted());
      QVERIFY(run.signedResult.dump().find("recommended\"") == std::string::npos);
    }
  }

  void computesTodaysResultsBesideThem() {
    for (const auto& run : history().runs) {
      const Evaluated& today = history().evaluated.at(run.id);
      QVERIFY2(today.problem.empty(), (run.step + ": " + today.problem).c_str());
      QVERIFY(isCurrent(today, run));
      QVERIFY(!today.result.values.empty() || run.step == "power-up" || run.step == "safety");
    }
    const std::string hash = askSql(m_path, "SELECT inputs_hash FROM results ORDER BY run DESC LIMIT 1");
    QCOMPARE(hash, hashOf(history().runs.back().inputs));
  }
};

FETTLE_TEST(TestFormat1)
#include "test_format_1.moc"
