#include <QTest>
#include <algorithm>
#include <random>

#include "tests/core/store/store_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

std::string noteOf(int i) {
  return "needle " + std::to_string(i) + ".";
}

/// Many runs with notes that can be found in the file, so that a page in the middle can be hit.
History longHistory() {
  History history = fullHistory();
  for (int i = 0; i < 300; ++i) {
    StepRun run{100 + i, 8, "probe-position", "", {{"filler", std::string(400, 'f')}}, noteOf(i), "", {}};
    history.runs.push_back(run);
  }
  return history;
}

std::size_t pageSizeOf(const std::string& bytes) {
  return static_cast<std::size_t>(static_cast<unsigned char>(bytes[16])) * 256 +
         static_cast<unsigned char>(bytes[17]);
}

/// Overwrites the page that starts at or before a place with nonsense.
void spoilPageAt(std::string& bytes, std::size_t place) {
  const std::size_t size = pageSizeOf(bytes);
  std::fill_n(bytes.begin() + static_cast<std::ptrdiff_t>(place / size * size), size, '\xee');
}

void spoilTable(const std::string& path, const std::string& table) {
  const std::string page = askSql(path, "SELECT rootpage FROM sqlite_schema WHERE name='" + table + "'");
  std::string bytes = bytesOf(path);
  spoilPageAt(bytes, (std::stoul(page) - 1) * pageSizeOf(bytes));
  writeBytes(path, bytes);
}

/// Opens a damaged file, checks that it is left alone, and hands out what could be read.
std::unique_ptr<MachineFile> openedDamaged(const std::string& path) {
  const std::string before = bytesOf(path);
  auto file = MachineFile::open(path);
  if (!file || (*file)->readOnly() != ReadOnlyReason::damaged || (*file)->integrity() == "ok") {
    return nullptr;
  }
  const auto done = (*file)->apply({std::nullopt, PartChange{999, "", "nozzle", ""}, ""});
  return !done && bytesOf(path) == before ? std::move(*file) : nullptr;
}

}  // namespace

class TestDamage : public QObject {
  Q_OBJECT

 private slots:
  void aSpoiledTableCostsOnlyItself() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    QVERIFY(MachineFile::create(path, fullHistory()));
    spoilTable(path, "step_marks");
    const auto file = openedDamaged(path);
    QVERIFY(file);
    ONE_SENTENCE(file->readOnlySentence());
    QCOMPARE(file->losses().size(), 1U);
    ONE_SENTENCE(file->losses()[0]);
    QCOMPARE(differences(file->history(), fullHistory()), QString("marks; "));
  }

  void everyTableCanBeSpoiled_data() {
    QTest::addColumn<QString>("table");
    QTest::addColumn<QString>("lost");
    QTest::newRow("sheet") << "machine"
                           << "machine; ";
    QTest::newRow("as found") << "machine_as_found"
                              << "machine; ";
    QTest::newRow("instruments") << "machine_instruments"
                                 << "machine; ";
    QTest::newRow("tolerances") << "machine_tolerances"
                                << "machine; ";
    QTest::newRow("part changes") << "part_changes"
                                  << "part changes; ";
    QTest::newRow("sessions") << "sessions"
                              << "sessions; ";
    QTest::newRow("runs") << "step_runs"
                          << "runs; ";
    QTest::newRow("adoptions") << "step_runs_adopted"
                               << "runs; ";
    QTest::newRow("results") << "results"
                             << "results; ";
  }
  void everyTableCanBeSpoiled() {
    QFETCH(QString, table);
    QFETCH(QString, lost);
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    History history = fullHistory();
    history.evaluated[5] = someResult("probe-position", 1);
    QVERIFY(MachineFile::create(path, history));
    spoilTable(path, table.toStdString());
    const auto file = openedDamaged(path);
    QVERIFY(file);
    QCOMPARE(file->losses().size(), 1U);
    ONE_SENTENCE(file->losses()[0]);
    QCOMPARE(differences(file->history(), history), lost);
  }

  void bothSidesOfASpoiledPageAreRead() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    const History history = longHistory();
    QVERIFY(MachineFile::create(path, history));
    std::string bytes = bytesOf(path);
    spoilPageAt(bytes, bytes.find(noteOf(150)));
    writeBytes(path, bytes);
    const auto file = openedDamaged(path);
    QVERIFY(file);
    QCOMPARE(file->losses().size(), 1U);
    ONE_SENTENCE(file->losses()[0]);
    // A page of 8 kB holds some 17 of these runs; what was read is exactly as it was.
    const auto& runs = file->history().runs;
    QVERIFY(runs.size() >= history.runs.size() - 20 && runs.size() < history.runs.size());
    QVERIFY(runs.front() == history.runs.front());
    QVERIFY(runs.back() == history.runs.back());
    for (const StepRun& run : runs) {
      QVERIFY(run == *history.run(run.id));
    }
    QVERIFY(!file->history().run(250));
  }

  void aRowThatMakesNoSenseIsALoss() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    QVERIFY(MachineFile::create(path, fullHistory()));
    runSql(path, "UPDATE step_runs SET inputs='{\"margin\": ' WHERE id=6");
    OPENED(file, MachineFile::open(path));
    QCOMPARE(file->readOnly(), ReadOnlyReason::damaged);
    QCOMPARE(file->losses().size(), 1U);
    ONE_SENTENCE(file->losses()[0]);
    QCOMPARE(file->history().runs.size(), fullHistory().runs.size() - 1);
  }

  void aFileCutShortIsLeftAlone() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    QVERIFY(MachineFile::create(path, longHistory()));
    const std::string whole = bytesOf(path);
    for (const std::size_t length :
         {whole.size() - 1, whole.size() - 8192, whole.size() / 2, whole.size() / 10, 200UL}) {
      writeBytes(path, whole.substr(0, length));
      const auto file = openedDamaged(path);
      QVERIFY(file);
      ONE_SENTENCE(file->readOnlySentence());
      for (const auto& loss : file->losses()) {
        ONE_SENTENCE(loss);
      }
    }
  }

  void theListOfTablesCanBeSpoiled() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    QVERIFY(MachineFile::create(path, fullHistory()));
    std::string bytes = bytesOf(path);
    std::fill_n(bytes.begin() + 100, 3000, '\xee');
    writeBytes(path, bytes);
    const auto file = openedDamaged(path);
    QVERIFY(file);
    QVERIFY(!file->losses().empty());
  }

  /// Random damage (fixed seed): never a crash, never a write, and a file that opens for writing has
  /// passed its check. SQLite has no checksums, so a change inside a text goes unnoticed.
  void randomDamageIsNeverWorsened() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    History history = longHistory();
    history.evaluated[5] = someResult("probe-position", 1);
    QVERIFY(MachineFile::create(path, history));
    const std::string whole = bytesOf(path);
    std::mt19937 random(20261125);
    int damaged = 0;
    for (int round = 0; round < 200; ++round) {
      std::string bytes = whole;
      const std::size_t length = 1 + random() % 2000;
      const std::size_t at = random() % (bytes.size() - length);
      for (std::size_t i = at; i < at + length; ++i) {
        bytes[i] = static_cast<char>(random());
      }
      writeBytes(path, bytes);
      {
        const auto file = MachineFile::open(path);
        if (file) {
          damaged += (*file)->readOnly() == ReadOnlyReason::damaged ? 1 : 0;
          ONE_SENTENCE((*file)->readOnlySentence().empty() ? "Writable." : (*file)->readOnlySentence());
          QVERIFY((*file)->readOnly() == ReadOnlyReason::damaged || (*file)->losses().empty());
        } else {
          ONE_SENTENCE(file.error());
        }
      }
      QVERIFY(bytesOf(path) == bytes);
    }
    QVERIFY2(damaged > 100, qPrintable(QString("only %1 of 200 were noticed").arg(damaged)));
  }
};

FETTLE_TEST(TestDamage)
#include "test_damage.moc"
