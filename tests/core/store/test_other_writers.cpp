#include <SQLiteCpp/Database.h>

#include <QTest>
#include <filesystem>

#include "tests/core/store/store_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// Programs that write to an open file without asking for the lock, as those that synchronise folders do.
class TestOtherWriters : public QObject {
  Q_OBJECT

  /// The next entry is refused with one sentence, and history and file are as they were.
  static void checkRefused(MachineFile& file) {
    const History before = file.history();
    const std::string bytes = bytesOf(file.path());
    const auto done = file.apply(notesChange(before, 3, "too late"));
    QVERIFY(!done);
    ONE_SENTENCE(done.error());
    SAME_HISTORY(file.history(), before);
    QVERIFY(bytesOf(file.path()) == bytes);
  }

 private slots:
  void aWriteOfAnotherIsNoticed() {
    const Folder folder;
    OPENED(file, MachineFile::create(folder.path("a.fettle"), smallHistory()));
    QVERIFY(file->apply(notesChange(file->history(), 3, "mine")));
    runSql(folder.path("a.fettle"), "UPDATE step_runs SET notes='theirs'");
    checkRefused(*file);
    file->hold(3, someResult("probe-position", 1));
    QVERIFY(!file->keep());
    QVERIFY(!file->addBlob("bytes", "name"));
    file.reset();
    OPENED(again, MachineFile::open(folder.path("a.fettle")));
    QCOMPARE(again->history().runs[0].notes, std::string("theirs"));
    QVERIFY(again->apply(notesChange(again->history(), 3, "mine again")));
  }

  void aFilePutInItsPlaceIsNoticed() {
    const Folder folder;
    OPENED(file, MachineFile::create(folder.path("a.fettle"), smallHistory()));
    QVERIFY(MachineFile::create(folder.path("b.fettle"), fullHistory()));
    std::filesystem::rename(folder.path("b.fettle"), folder.path("a.fettle"));
    checkRefused(*file);
    QVERIFY(file->saveCopy(folder.path("copy.fettle")));
    OPENED(copy, MachineFile::open(folder.path("copy.fettle")));
    SAME_HISTORY(copy->history(), smallHistory());
    file.reset();
    OPENED(again, MachineFile::open(folder.path("a.fettle")));
    SAME_HISTORY(again->history(), fullHistory());
  }

  void theRemovalOfTheFileIsNoticed() {
    const Folder folder;
    OPENED(file, MachineFile::create(folder.path("a.fettle"), smallHistory()));
    std::filesystem::remove(folder.path("a.fettle"));
    checkRefused(*file);
    QVERIFY(!std::filesystem::exists(folder.path("a.fettle")));
    QVERIFY(file->saveCopy(folder.path("copy.fettle")));
    OPENED(copy, MachineFile::open(folder.path("copy.fettle")));
    SAME_HISTORY(copy->history(), smallHistory());
  }

  void aLongWriteOfAnotherIsAnsweredWithASentence() {
    const Folder folder;
    OPENED(file, MachineFile::create(folder.path("a.fettle"), smallHistory()));
    {
      SQLite::Database other(folder.path("a.fettle"), SQLite::OPEN_READWRITE);
      other.exec("BEGIN EXCLUSIVE");
      checkRefused(*file);
      const auto read = MachineFile::open(folder.path("a.fettle"), true);
      QVERIFY(!read);
      ONE_SENTENCE(read.error());
    }
    QVERIFY(file->apply(notesChange(file->history(), 3, "now")));
  }
};

FETTLE_TEST(TestOtherWriters)
#include "test_other_writers.moc"
