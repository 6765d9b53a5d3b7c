#include <QTest>
#include <cmath>

#include "core/history/evaluation.h"
#include "core/store/schema.h"
#include "tests/core/store/store_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

// Expected values: what was written is what is read; there is no outside source.
class TestMachineFile : public QObject {
  Q_OBJECT

 private slots:
  void givesBackEveryKindOfRecord() {
    const Folder folder;
    History history = fullHistory();
    history.evaluated[5] = someResult("probe-position", 0.1 + 0.2);
    history.evaluated[6] = {};
    history.evaluated[6].problem = "The table has no rows.";
    {
      OPENED(file, MachineFile::create(folder.path("a.fettle"), history));
      SAME_HISTORY(file->history(), history);
    }
    OPENED(again, MachineFile::open(folder.path("a.fettle")));
    SAME_HISTORY(again->history(), history);
    QCOMPARE(again->integrity(), std::string("ok"));
    QVERIFY(std::signbit(again->history().runs[2].inputs["margin"].get<double>()));
  }

  void writesEachChangeAndTakesItBack() {
    const Folder folder;
    const History full = fullHistory();
    OPENED(file, MachineFile::create(folder.path("a.fettle")));
    std::vector<Change> changes{{MachineRecord{}, full.machine, ""}};
    const auto add = [&](const auto& records) {
      for (const auto& record : records) {
        changes.push_back({std::nullopt, record, ""});
      }
    };
    add(full.changes);
    add(full.sessions);
    add(full.runs);
    add(full.marks);
    const auto onDisk = [&] {
      auto read = MachineFile::open(folder.path("a.fettle"), true);
      return read ? (*read)->history() : History{};
    };
    for (const auto& change : changes) {
      const auto done = file->apply(change);
      QVERIFY2(done, done ? "" : done.error().c_str());
      SAME_HISTORY(onDisk(), file->history());
    }
    SAME_HISTORY(file->history(), full);
    for (auto change = changes.rbegin(); change != changes.rend(); ++change) {
      QVERIFY(file->apply(change->reversed()));
      SAME_HISTORY(onDisk(), file->history());
    }
    SAME_HISTORY(file->history(), History{});
  }

  void replacesARecordThatOthersHangOn() {
    const Folder folder;
    OPENED(file, MachineFile::create(folder.path("a.fettle"), fullHistory()));
    file->hold(5, someResult("probe-position", 1));
    QVERIFY(file->keep());
    Session after = file->history().sessions[0];
    after.benchSeconds = 77;
    QVERIFY(file->apply({file->history().sessions[0], after, ""}));
    QVERIFY(file->apply(notesChange(file->history(), 5, "new")));
    OPENED(read, MachineFile::open(folder.path("a.fettle"), true));
    SAME_HISTORY(read->history(), file->history());
    QCOMPARE(read->history().evaluated.count(5), 1U);
  }

  void refusesAChangeThatBelongsNowhere() {
    const Folder folder;
    OPENED(file, MachineFile::create(folder.path("a.fettle"), smallHistory()));
    const History before = file->history();
    const auto done = file->apply(addedRun(before, 99, "heater"));
    QVERIFY(!done);
    ONE_SENTENCE(done.error());
    SAME_HISTORY(file->history(), before);
    QVERIFY(file->apply(addedRun(before, 2, "heater")));
  }

  void holdsResultsUntilTheyAreKept() {
    const Folder folder;
    OPENED(file, MachineFile::create(folder.path("a.fettle"), smallHistory()));
    QVERIFY(file->keep());
    file->hold(3, someResult("probe-position", 2));
    file->hold(99, someResult("probe-position", 2));  // not there: a worker that came too late
    QCOMPARE(file->history().evaluated.size(), 1U);
    const auto rows = [&](const char* table) {
      return askSql(folder.path("a.fettle"), std::string("SELECT count(*) FROM ") + table);
    };
    QCOMPARE(rows("results"), std::string("0"));
    QVERIFY(file->keep());
    QCOMPARE(rows("results"), std::string("1"));
    QCOMPARE(rows("quantities"), std::string("3"));
    QCOMPARE(rows("proposals"), std::string("2"));
    file->hold(3, someResult("probe-position", 4));
    QVERIFY(file->keep());
    QCOMPARE(rows("quantities"), std::string("3"));
    QCOMPARE(askSql(folder.path("a.fettle"), "SELECT value FROM quantities WHERE id='found'"),
             std::string("4.0"));
    QCOMPARE(askSql(folder.path("a.fettle"), "SELECT verdict FROM results"), std::string("undecided"));
  }

  void removesTheResultWithItsRun() {
    const Folder folder;
    OPENED(file, MachineFile::create(folder.path("a.fettle"), smallHistory()));
    file->hold(3, someResult("probe-position", 2));
    QVERIFY(file->keep());
    file->hold(3, someResult("probe-position", 3));  // held when the run goes
    const Change removal{file->history().runs[0], std::nullopt, ""};
    QVERIFY(file->apply(removal));
    QVERIFY(file->history().evaluated.empty());
    QVERIFY(file->keep());
    QVERIFY(file->apply(removal.reversed()));
    QVERIFY(file->history().evaluated.empty());
    OPENED(read, MachineFile::open(folder.path("a.fettle"), true));
    SAME_HISTORY(read->history(), file->history());
    QCOMPARE(askSql(folder.path("a.fettle"), "SELECT count(*) FROM quantities"), std::string("0"));
  }

  void passesOverAResultThatMakesNoSense() {
    const Folder folder;
    {
      OPENED(file, MachineFile::create(folder.path("a.fettle"), smallHistory()));
      file->hold(3, someResult("probe-position", 2));
      QVERIFY(file->keep());
    }
    runSql(folder.path("a.fettle"), "UPDATE results SET result='{\"step\": 5}'");
    OPENED(file, MachineFile::open(folder.path("a.fettle")));
    QCOMPARE(file->readOnly(), ReadOnlyReason::none);
    SAME_HISTORY(file->history(), smallHistory());  // as if not evaluated
  }

  void keepsBlobsByContent() {
    const Folder folder;
    OPENED(file, MachineFile::create(folder.path("a.fettle")));
    std::string bytes(3'000'000, '\0');
    for (std::size_t i = 0; i < bytes.size(); ++i) {
      bytes[i] = static_cast<char>(i * 7919 >> 3);
    }
    for (const std::string& content : {bytes, std::string(), std::string("\0\r\n", 3)}) {
      const auto hash = file->addBlob(content, "Aufnahme 1.csv");
      QVERIFY(hash);
      QCOMPARE(*hash, sha256(content));
      QVERIFY(file->addBlob(content, "another name") == hash);
      QVERIFY(file->blob(*hash) == content);
    }
    QCOMPARE(askSql(folder.path("a.fettle"), "SELECT count(*) FROM blobs"), std::string("3"));
    QCOMPARE(askSql(folder.path("a.fettle"), "SELECT max(size) FROM blobs"), std::string("3000000"));
    const auto missing = file->blob(std::string(64, '0'));
    QVERIFY(!missing);
    ONE_SENTENCE(missing.error());
  }

  void noticesADamagedBlob() {
    const Folder folder;
    OPENED(file, MachineFile::create(folder.path("a.fettle")));
    const auto hash = file->addBlob("content", "a");
    runSql(folder.path("a.fettle"), "UPDATE blobs SET bytes=x'00'");
    const auto read = file->blob(*hash);
    QVERIFY(!read);
    ONE_SENTENCE(read.error());
  }

  void leavesNothingBesideTheFile() {
    const Folder folder;
    {
      OPENED(file, MachineFile::create(folder.path("a.fettle"), smallHistory()));
      QVERIFY(file->apply(notesChange(file->history(), 3, "new")));
      QVERIFY(file->saveCopy(folder.path("copy.fettle")));
    }
    QCOMPARE(folder.names(), (std::vector<std::string>{"a.fettle", "copy.fettle"}));
  }

  void savesAWholeCopy() {
    const Folder folder;
    OPENED(file, MachineFile::create(folder.path("a.fettle"), fullHistory()));
    const auto hash = file->addBlob("content", "a");
    QVERIFY(file->saveCopy(folder.path("copy.fettle")));
    OPENED(copy, MachineFile::open(folder.path("copy.fettle")));
    SAME_HISTORY(copy->history(), file->history());
    QVERIFY(copy->blob(*hash) == std::string("content"));
    QCOMPARE(copy->integrity(), std::string("ok"));
  }

  void neverOverwrites() {
    const Folder folder;
    writeBytes(folder.path("other.txt"), "not ours");
    OPENED(file, MachineFile::create(folder.path("a.fettle"), smallHistory()));
    for (const auto& name : {"other.txt", "a.fettle"}) {
      const std::string before = bytesOf(folder.path(name));
      const auto copied = file->saveCopy(folder.path(name));
      const auto made = MachineFile::create(folder.path(name));
      QVERIFY(!copied && !made);
      ONE_SENTENCE(copied.error());
      ONE_SENTENCE(made.error());
      QVERIFY(bytesOf(folder.path(name)) == before);
    }
  }

  void marksTheFileAsItsOwn() {
    const Folder folder;
    OPENED(file, MachineFile::create(folder.path("a.fettle")));
    QCOMPARE(askSql(folder.path("a.fettle"), "PRAGMA application_id"), std::to_string(applicationId));
    QCOMPARE(askSql(folder.path("a.fettle"), "PRAGMA user_version"),
             std::to_string(MachineFile::formatVersion));
    QCOMPARE(bytesOf(folder.path("a.fettle")).substr(68, 4), std::string("FTL1"));
  }
};

FETTLE_TEST(TestMachineFile)
#include "test_machine_file.moc"
