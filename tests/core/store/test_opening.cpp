#include <SQLiteCpp/Database.h>
#include <signal.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QTest>
#include <filesystem>

#include "core/store/file_lock.h"
#include "tests/core/store/store_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// The system asks root for no permissions: as long as this lives the test is somebody else.
class WithoutPrivileges {
 public:
  WithoutPrivileges() {
    if (m_root && seteuid(nobody) != 0) {
      qFatal("the test cannot give up its privileges");
    }
  }
  ~WithoutPrivileges() {
    if (m_root && seteuid(0) != 0) {
      qFatal("the test cannot take its privileges back");
    }
  }

 private:
  static constexpr uid_t nobody = 65534;
  bool m_root = geteuid() == 0;
};

/// Opens a file that can only be read and checks that nothing changes it.
void checkOnlyRead(const std::string& path, ReadOnlyReason reason, const History& expected) {
  const std::string before = bytesOf(path);
  {
    OPENED(file, MachineFile::open(path));
    QCOMPARE(file->readOnly(), reason);
    ONE_SENTENCE(file->readOnlySentence());
    SAME_HISTORY(file->history(), expected);
    const auto done = file->apply({std::nullopt, PartChange{99, "", "nozzle", ""}, ""});
    QVERIFY(!done);
    ONE_SENTENCE(done.error());
    file->hold(3, someResult("probe-position", 1));
    QVERIFY(!file->keep());
    QVERIFY(!file->addBlob("bytes", "name"));
    QCOMPARE(file->integrity(), std::string("ok"));
    QVERIFY(file->history().changes.empty());
  }
  QVERIFY(bytesOf(path) == before);
}

}  // namespace

class TestOpening : public QObject {
  Q_OBJECT

 private slots:
  void refusesWhatIsNoMachineFile_data() {
    QTest::addColumn<QByteArray>("bytes");
    const Folder folder;
    runSql(folder.path("plain.db"), "CREATE TABLE sheet(key); PRAGMA user_version=1");
    QTest::newRow("empty") << QByteArray();
    QTest::newRow("text") << QByteArray("x,y\n1,2\n").repeated(100);
    QTest::newRow("another database") << QByteArray::fromStdString(bytesOf(folder.path("plain.db")));
    QTest::newRow("only the first bytes") << QByteArray("SQLite format 3");
    QTest::newRow("zeros") << QByteArray(20000, '\0');
  }
  void refusesWhatIsNoMachineFile() {
    QFETCH(QByteArray, bytes);
    const Folder folder;
    writeBytes(folder.path("a.fettle"), bytes.toStdString());
    for (const bool readOnly : {false, true}) {
      const auto file = MachineFile::open(folder.path("a.fettle"), readOnly);
      QVERIFY(!file);
      ONE_SENTENCE(file.error());
    }
    QVERIFY(bytesOf(folder.path("a.fettle")) == bytes.toStdString());
    QCOMPARE(folder.names(), std::vector<std::string>{"a.fettle"});
  }

  void refusesFoldersAndWhatIsMissing() {
    const Folder folder;
    std::filesystem::create_directory(folder.path("folder.fettle"));
    QCOMPARE(::mkfifo(folder.path("pipe.fettle").c_str(), 0600), 0);
    for (const auto& name : {"folder.fettle", "missing.fettle", "missing/a.fettle", "pipe.fettle"}) {
      const auto file = MachineFile::open(folder.path(name));
      QVERIFY(!file);
      ONE_SENTENCE(file.error());
    }
    const auto made = MachineFile::create(folder.path("missing/a.fettle"));
    QVERIFY(!made);
    ONE_SENTENCE(made.error());
    QCOMPARE(folder.names(), (std::vector<std::string>{"folder.fettle", "pipe.fettle"}));
  }

  void opensForReadingWhenAsked() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    QVERIFY(MachineFile::create(path, smallHistory()));
    OPENED(file, MachineFile::open(path, true));
    QCOMPARE(file->readOnly(), ReadOnlyReason::asked);
    ONE_SENTENCE(file->readOnlySentence());
    QVERIFY(!file->apply(notesChange(file->history(), 3, "new")));
    QCOMPARE(folder.names(), std::vector<std::string>{"a.fettle"});  // takes no lock
  }

  void opensForReadingWhatIsOpenElsewhere() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    {
      OPENED(first, MachineFile::create(path, smallHistory()));
      QCOMPARE(first->readOnly(), ReadOnlyReason::none);
      QVERIFY(first->readOnlySentence().empty());
      checkOnlyRead(path, ReadOnlyReason::otherProgram, first->history());
      std::filesystem::create_symlink(path, folder.path("other name.fettle"));
      checkOnlyRead(folder.path("other name.fettle"), ReadOnlyReason::otherProgram, first->history());
      QVERIFY(first->apply(notesChange(first->history(), 3, "still writes")));
    }
    OPENED(later, MachineFile::open(path));
    QCOMPARE(later->readOnly(), ReadOnlyReason::none);
    QCOMPARE(later->history().runs[0].notes, std::string("still writes"));
  }

  void aKilledProgramLeavesNoObstacle() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    QVERIFY(MachineFile::create(path, smallHistory()));
    int ready[2];
    QCOMPARE(pipe(ready), 0);
    const pid_t child = fork();
    if (child == 0) {
      const auto file = MachineFile::open(path);
      const char mark = file && (*file)->readOnly() == ReadOnlyReason::none ? 'y' : 'n';
      if (write(ready[1], &mark, 1) == 1) {
        pause();
      }
      _exit(0);
    }
    char mark = 0;
    QCOMPARE(read(ready[0], &mark, 1), 1);
    QCOMPARE(mark, 'y');
    checkOnlyRead(path, ReadOnlyReason::otherProgram, smallHistory());
    kill(child, SIGKILL);
    waitpid(child, nullptr, 0);
    close(ready[0]);
    close(ready[1]);
    QVERIFY(std::filesystem::exists(path + ".lock"));
    OPENED(file, MachineFile::open(path));
    QCOMPARE(file->readOnly(), ReadOnlyReason::none);
  }

  void aLockIsHeldOnce() {
    const Folder folder;
    auto first = std::make_unique<FileLock>();
    FileLock second, third;
    QCOMPARE(first->take(folder.path("a")), FileLock::Outcome::taken);
    QCOMPARE(second.take(folder.path("a")), FileLock::Outcome::heldByOther);
    first.reset();
    QVERIFY(folder.names().empty());
    QCOMPARE(second.take(folder.path("a")), FileLock::Outcome::taken);
    QCOMPARE(third.take(folder.path("missing/a")), FileLock::Outcome::notPossible);
  }

  void opensForReadingWithoutPermission_data() {
    QTest::addColumn<int>("folderMode");
    QTest::addColumn<int>("fileMode");
    QTest::newRow("neither") << 0555 << 0444;
    QTest::newRow("file only") << 0555 << 0666;
    QTest::newRow("folder only") << 0777 << 0444;
  }
  void opensForReadingWithoutPermission() {
    QFETCH(int, folderMode);
    QFETCH(int, fileMode);
    const Folder folder;
    const std::string inside = folder.path("inside");
    const std::string path = inside + "/a.fettle";
    std::filesystem::create_directory(inside);
    OPENED(other, MachineFile::create(folder.path("other.fettle"), smallHistory()));
    QVERIFY(MachineFile::create(path, smallHistory()));
    QCOMPARE(::chmod(path.c_str(), static_cast<mode_t>(fileMode)), 0);
    QCOMPARE(::chmod(inside.c_str(), static_cast<mode_t>(folderMode)), 0);
    {
      const WithoutPrivileges ordinary;
      checkOnlyRead(path, ReadOnlyReason::noPermission, smallHistory());
      if (folderMode == 0555) {  // the writers to a folder that cannot be written
        const auto made = MachineFile::create(inside + "/new.fettle");
        const auto copied = other->saveCopy(inside + "/new.fettle");
        QVERIFY(!made && !copied);
        ONE_SENTENCE(made.error());
        ONE_SENTENCE(copied.error());
      }
    }
    QCOMPARE(::chmod(inside.c_str(), 0755), 0);
    QVERIFY(!std::filesystem::exists(inside + "/new.fettle"));
    QVERIFY(other->apply(notesChange(other->history(), 3, "new")));
  }

  void refusesWhatCannotBeRead() {
    const Folder folder;
    QVERIFY(MachineFile::create(folder.path("a.fettle")));
    QCOMPARE(::chmod(folder.path("a.fettle").c_str(), 0), 0);
    const WithoutPrivileges ordinary;
    const auto file = MachineFile::open(folder.path("a.fettle"));
    QVERIFY(!file);
    ONE_SENTENCE(file.error());
  }

  void readsWhatItUnderstandsOfANewerFile() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    QVERIFY(MachineFile::create(path, smallHistory()));
    runSql(path,
           "ALTER TABLE sessions ADD COLUMN humidity REAL; CREATE TABLE photos(id); PRAGMA user_version=3");
    checkOnlyRead(path, ReadOnlyReason::newerProgram, smallHistory());
    runSql(path, "DROP TABLE step_marks");
    OPENED(file, MachineFile::open(path));
    QCOMPARE(file->readOnly(), ReadOnlyReason::newerProgram);
    SAME_HISTORY(file->history(), smallHistory());
    QCOMPARE(file->losses().size(), 1U);
    ONE_SENTENCE(file->losses()[0]);
  }

  void finishesWhatAKilledProgramLeftHalfWritten_data() {
    QTest::addColumn<bool>("readOnly");
    QTest::newRow("for writing") << false;
    QTest::newRow("for reading") << true;
  }
  void finishesWhatAKilledProgramLeftHalfWritten() {
    QFETCH(bool, readOnly);
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    QVERIFY(MachineFile::create(path, smallHistory()));
    // A change larger than its cache is written before the commit; a copy of both files in that state is
    // what a killed program leaves.
    {
      SQLite::Database database(path, SQLite::OPEN_READWRITE);
      database.exec("PRAGMA cache_size=2; BEGIN; UPDATE step_runs SET notes='half';");
      database.exec("INSERT INTO blobs VALUES('x','x',1,zeroblob(500000));");
      writeBytes(folder.path("killed.fettle"), bytesOf(path));
      writeBytes(folder.path("killed.fettle-journal"), bytesOf(path + "-journal"));
      database.exec("ROLLBACK");
    }
    QVERIFY(bytesOf(folder.path("killed.fettle")) != bytesOf(path));
    QVERIFY(bytesOf(folder.path("killed.fettle-journal"))[0] != '\0');
    OPENED(file, MachineFile::open(folder.path("killed.fettle"), readOnly));
    SAME_HISTORY(file->history(), smallHistory());
    QCOMPARE(file->integrity(), std::string("ok"));
    QVERIFY(!file->blob("x"));
  }
};

FETTLE_TEST(TestOpening)
#include "test_opening.moc"
