#include <QTest>

#include "core/history/evaluation.h"
#include "core/store/import_file.h"
#include "core/store/migration.h"
#include "tests/core/store/failing_device.h"
#include "tests/core/store/store_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// More operations than any writer here needs: a test that gets there would go on for ever.
constexpr int tooMany = 2000;

/// An entry over many pages, so that the device has many occasions to fail: 100 kB take 13 pages of 8 kB,
/// and each is written once at least.
constexpr int pagesOfEntry = 13;
Change longEntry(const History& history, char letter) {
  return notesChange(history, 3, std::string(100'000, letter));
}

/// A file with smallHistory(). Made once and then written as bytes: the test needs hundreds of them.
auto smallFile(const std::string& path) {
  static const std::string bytes = [] {
    const Folder folder;
    const auto file = MachineFile::create(folder.path("a.fettle"), smallHistory());
    return bytesOf(folder.path("a.fettle"));
  }();
  writeBytes(path, bytes);
  return MachineFile::open(path);
}

}  // namespace

/// Every writer on a device that fails at its first, second, third, ... operation, until it gets through.
class TestFailingDevice : public QObject {
  Q_OBJECT

  static void addFaults() {
    QTest::addColumn<bool>("full");
    QTest::addColumn<bool>("once");
    QTest::newRow("full") << true << false;
    QTest::newRow("full for a moment") << true << true;
    QTest::newRow("broken") << false << false;
    QTest::newRow("broken for a moment") << false << true;
  }

  /// Runs `attempt` with a fault ever later; it returns whether it got through without one.
  template <typename Attempt>
  static void untilNothingFails(const Attempt& attempt, int atLeast) {
    QFETCH(bool, full);
    QFETCH(bool, once);
    FailingDevice device;
    const auto fault = full ? FailingDevice::Fault::full : FailingDevice::Fault::broken;
    int at = 1;
    for (bool through = false; !through && at < tooMany; ++at) {
      attempt(device, [&] { device.failFrom(at, fault, once); });
      if (QTest::currentTestFailed()) {
        qWarning("at operation %d", at);
        return;
      }
      through = !device.hasFailed();
    }
    QVERIFY2(at > atLeast && at < tooMany, qPrintable(QString("got through after %1").arg(at)));
  }

 private slots:
  void anEntry_data() { addFaults(); }
  void anEntry() {
    untilNothingFails(
        [](FailingDevice& device, const auto& arm) {
          const Folder folder;
          const std::string path = folder.path("a.fettle");
          OPENED(file, smallFile(path));
          const History before = file->history();
          const Change entry = longEntry(before, 'n');
          arm();
          const auto done = file->apply(entry);
          if (!done) {
            QVERIFY(device.hasFailed());
            ONE_SENTENCE(done.error());
            SAME_HISTORY(file->history(), before);
          }
          // The program ends without another write, and begins anew on a sound device.
          file.reset();
          device.repair();
          OPENED(again, MachineFile::open(path));
          QCOMPARE(again->readOnly(), ReadOnlyReason::none);
          QCOMPARE(again->integrity(), std::string("ok"));
          History after = before;
          apply(entry, after);
          if (done) {
            SAME_HISTORY(again->history(), after);
          } else if (!differences(again->history(), after).isEmpty()) {
            SAME_HISTORY(again->history(), before);
          }
        },
        pagesOfEntry);
  }

  void anEntryThatIsRepeated_data() { addFaults(); }
  void anEntryThatIsRepeated() {
    untilNothingFails(
        [](FailingDevice& device, const auto& arm) {
          const Folder folder;
          const std::string path = folder.path("a.fettle");
          OPENED(file, smallFile(path));
          const Change entry = longEntry(file->history(), 'n');
          arm();
          if (!file->apply(entry)) {
            device.repair();
            const auto done = file->apply(entry);
            QVERIFY2(done, done ? "" : done.error().c_str());
          }
          device.repair();
          OPENED(read, MachineFile::open(path, true));
          SAME_HISTORY(read->history(), file->history());
          QCOMPARE(read->integrity(), std::string("ok"));
        },
        pagesOfEntry);
  }

  /// What failed stays out even where a failed sync had already let it onto the disk, also after more
  /// failures; here it would have taken a result with it.
  void otherEntriesAfterwards_data() { addFaults(); }
  void otherEntriesAfterwards() {
    untilNothingFails(
        [](FailingDevice& device, const auto& arm) {
          const Folder folder;
          const std::string path = folder.path("a.fettle");
          OPENED(file, smallFile(path));
          file->hold(3, someResult("probe-position", 1));
          QVERIFY(file->keep());
          arm();
          for (const Change& entry : {Change{file->history().runs[0], std::nullopt, ""},
                                      addedRun(file->history(), 2, "heater")}) {
            if (const auto done = file->apply(entry); !done) {
              ONE_SENTENCE(done.error());
            }
          }
          device.repair();
          const auto done = file->apply({std::nullopt, PartChange{99, "", "nozzle", ""}, ""});
          QVERIFY2(done, done ? "" : done.error().c_str());
          QVERIFY(file->keep());
          OPENED(read, MachineFile::open(path, true));
          SAME_HISTORY(read->history(), file->history());
          QCOMPARE(read->history().changes.size(), 1U);
          QCOMPARE(read->integrity(), std::string("ok"));
        },
        3);
  }

  void aResult_data() { addFaults(); }
  void aResult() {
    untilNothingFails(
        [](FailingDevice& device, const auto& arm) {
          const Folder folder;
          OPENED(file, smallFile(folder.path("a.fettle")));
          file->hold(3, someResult("probe-position", 1));
          arm();
          if (const auto done = file->keep(); !done) {
            ONE_SENTENCE(done.error());
            device.repair();
            QVERIFY(file->keep());
          }
          device.repair();
          OPENED(read, MachineFile::open(folder.path("a.fettle"), true));
          SAME_HISTORY(read->history(), file->history());
          QCOMPARE(read->history().evaluated.size(), 1U);
        },
        3);
  }

  void aBlob_data() { addFaults(); }
  void aBlob() {
    untilNothingFails(
        [](FailingDevice& device, const auto& arm) {
          const Folder folder;
          OPENED(file, smallFile(folder.path("a.fettle")));
          const std::string bytes(100'000, 'b');
          arm();
          auto hash = file->addBlob(bytes, "b");
          if (!hash) {
            ONE_SENTENCE(hash.error());
            device.repair();
            hash = file->addBlob(bytes, "b");
          }
          device.repair();
          QVERIFY(hash && file->blob(*hash) == bytes);
          QCOMPARE(file->integrity(), std::string("ok"));
          SAME_HISTORY(file->history(), smallHistory());
        },
        10);
  }

  void aNewFile_data() { addFaults(); }
  void aNewFile() {
    untilNothingFails(
        [](FailingDevice& device, const auto& arm) {
          const Folder folder;
          arm();
          bool made = false;
          if (const auto file = MachineFile::create(folder.path("a.fettle"), smallHistory()); !file) {
            ONE_SENTENCE(file.error());
          } else {
            made = true;
          }
          device.repair();
          QCOMPARE(folder.names().size(), made ? 1U : 0U);
        },
        10);
  }

  void anImport_data() { addFaults(); }
  void anImport() {
    const Json text{
        {"fettle", 1},
        {"machine", {{"name", "a"}}},
        {"sessions",
         {{{"date", "2026-11-25"},
           {"runs", {{{"step", "melt-rate"}, {"inputs", {{"steps", {{"file", "steps.csv"}}}}}}}}}}}};
    const std::string steps = "flow_mm3_s,delivered\n2,1\n#" + std::string(100'000, 'c');
    untilNothingFails(
        [&](FailingDevice& device, const auto& arm) {
          const Folder folder;
          arm();
          bool made = false;
          {
            const auto file = importFile(
                text, [&](const std::string&) { return tl::expected<std::string, std::string>(steps); },
                folder.path("a.fettle"));
            device.repair();
            if (file) {
              made = true;
              QCOMPARE((*file)->history().evaluated.size(), 1U);
              QVERIFY((*file)->blob(sha256(steps)) == steps);
            } else {
              ONE_SENTENCE(file.error());
            }
          }
          QCOMPARE(folder.names().size(), made ? 1U : 0U);
        },
        10);
  }

  void aCopy_data() { addFaults(); }
  void aCopy() {
    untilNothingFails(
        [](FailingDevice& device, const auto& arm) {
          const Folder folder;
          OPENED(file, smallFile(folder.path("a.fettle")));
          arm();
          const auto done = file->saveCopy(folder.path("copy.fettle"));
          device.repair();
          if (done) {
            OPENED(copy, MachineFile::open(folder.path("copy.fettle")));
            SAME_HISTORY(copy->history(), smallHistory());
          } else {
            ONE_SENTENCE(done.error());
            QCOMPARE(folder.names(), (std::vector<std::string>{"a.fettle", "a.fettle.lock"}));
          }
          QVERIFY(file->apply(longEntry(file->history(), 'n')));
        },
        5);
  }

  void aMigration_data() { addFaults(); }
  void aMigration() {
    untilNothingFails(
        [](FailingDevice& device, const auto& arm) {
          const Folder folder;
          const std::string path = folder.path("a.fettle");
          runSql(path, "PRAGMA user_version=1; CREATE TABLE t(a); INSERT INTO t VALUES('old')");
          const std::string before = bytesOf(path);
          arm();
          const auto done = migrateFile(path, 1, 2, {{1, "UPDATE t SET a='new'"}});
          device.repair();
          QCOMPARE(askSql(path, "SELECT a FROM t"), std::string(done ? "new" : "old"));
          if (done) {
            QCOMPARE(askSql(path + ".before-version-2", "SELECT a FROM t"), std::string("old"));
          } else {
            ONE_SENTENCE(done.error());
            QVERIFY(bytesOf(path) == before);
            QCOMPARE(folder.names(), std::vector<std::string>{"a.fettle"});
          }
        },
        8);
  }
};

FETTLE_TEST(TestFailingDevice)
#include "test_failing_device.moc"
