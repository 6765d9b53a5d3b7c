#include <sys/stat.h>

#include <QTest>

#include "core/store/migration.h"
#include "core/store/schema.h"
#include "tests/core/store/store_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// Format 0 is made up here: the only table is a list of visits.
void makeVersion0(const std::string& path) {
  runSql(path, "PRAGMA application_id=" + std::to_string(applicationId) +
                   "; CREATE TABLE visits(number INTEGER PRIMARY KEY, person TEXT);"
                   "INSERT INTO visits VALUES(7, 'Ada'), (8, 'Ben')");
}

std::vector<Migration> fromVisits() {
  return {
      {0, schemaSql() +
              "INSERT INTO sessions(id, date, operator) SELECT number, '2026-11-25', person FROM visits;"
              "DROP TABLE visits;"},
      {1, ""}};
}

History expectedHistory() {
  History history;
  history.sessions = {{7, "2026-11-25", "Ada", "", "", std::nullopt, 0},
                      {8, "2026-11-25", "Ben", "", "", std::nullopt, 0}};
  return history;
}

}  // namespace

class TestMigration : public QObject {
  Q_OBJECT

 private slots:
  void bringsAnOldFileUpToDateAndKeepsIt() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    makeVersion0(path);
    QCOMPARE(::chmod(path.c_str(), 0640), 0);
    {
      OPENED(file, MachineFile::open(path, false, fromVisits()));
      QCOMPARE(file->readOnly(), ReadOnlyReason::none);
      SAME_HISTORY(file->history(), expectedHistory());
      QVERIFY(file->apply({std::nullopt, PartChange{9, "", "nozzle", ""}, ""}));
      QCOMPARE(file->integrity(), std::string("ok"));
    }
    QCOMPARE(folder.names(), (std::vector<std::string>{"a.fettle", "a.fettle.before-version-2"}));
    QCOMPARE(askSql(path, "PRAGMA user_version"), std::string("2"));
    const std::string kept = path + ".before-version-2";
    QCOMPARE(askSql(kept, "PRAGMA user_version"), std::string("0"));
    QCOMPARE(askSql(kept, "SELECT group_concat(number || person) FROM visits"), std::string("7Ada,8Ben"));
    struct stat status {};
    QCOMPARE(::stat(path.c_str(), &status), 0);
    QCOMPARE(status.st_mode & 0777U, 0640U);
    OPENED(again, MachineFile::open(path, false, {}));
    QCOMPARE(again->history().changes.size(), 1U);
  }

  void neverOverwritesAnOlderKeptFile() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    writeBytes(path + ".before-version-2", "older");
    writeBytes(path + ".before-version-2-2", "older still");
    makeVersion0(path);
    QVERIFY(MachineFile::open(path, false, fromVisits()));
    QCOMPARE(bytesOf(path + ".before-version-2"), std::string("older"));
    QCOMPARE(bytesOf(path + ".before-version-2-2"), std::string("older still"));
    QCOMPARE(askSql(path + ".before-version-2-3", "SELECT count(*) FROM visits"), std::string("2"));
  }

  void aFailureLeavesTheFileUntouched_data() {
    QTest::addColumn<QString>("sql");
    QTest::newRow("nonsense at the end") << QString::fromStdString(schemaSql() + "DROP TABLE nothing;");
    QTest::newRow("orphans") << QString::fromStdString(
        schemaSql() + "INSERT INTO step_runs(id, session, step) VALUES(1, 99, 'a');");
    QTest::newRow("ends the transaction") << "DROP TABLE visits; COMMIT; DROP TABLE nothing;";
    QTest::newRow("no step") << "";
  }
  void aFailureLeavesTheFileUntouched() {
    QFETCH(QString, sql);
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    makeVersion0(path);
    const std::string before = bytesOf(path);
    const std::vector<Migration> steps =
        sql.isEmpty() ? std::vector<Migration>{} : std::vector<Migration>{{0, sql.toStdString()}, {1, ""}};
    const auto file = MachineFile::open(path, false, steps);
    QVERIFY(!file);
    ONE_SENTENCE(file.error());
    QVERIFY(bytesOf(path) == before);
    QCOMPARE(folder.names(), std::vector<std::string>{"a.fettle"});
    QVERIFY(MachineFile::open(path, false, fromVisits()));
  }

  void migratesInMemoryWhatIsNotToBeWritten() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    makeVersion0(path);
    const std::string before = bytesOf(path);
    {
      OPENED(file, MachineFile::open(path, true, fromVisits()));
      QCOMPARE(file->readOnly(), ReadOnlyReason::asked);
      SAME_HISTORY(file->history(), expectedHistory());
      QVERIFY(file->saveCopy(folder.path("copy.fettle")));
    }
    QVERIFY(bytesOf(path) == before);
    QCOMPARE(folder.names(), (std::vector<std::string>{"a.fettle", "copy.fettle"}));
    OPENED(copy, MachineFile::open(folder.path("copy.fettle"), false, {}));
    SAME_HISTORY(copy->history(), expectedHistory());
  }

  void stepsFollowOneAnother() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    makeVersion0(path);
    const auto done = migrateFile(path, 0, 3,
                                  {{1, "INSERT INTO visits SELECT number + 10, 'two' FROM visits"},
                                   {0, "DELETE FROM visits WHERE number=7"},
                                   {2, "UPDATE visits SET person=person || '!'"}});
    QVERIFY2(done, done ? "" : done.error().c_str());
    QCOMPARE(askSql(path, "SELECT group_concat(number || person) FROM visits"),
             std::string("8Ben!,18two!"));
    QCOMPARE(askSql(path, "PRAGMA user_version"), std::string("3"));
    QCOMPARE(folder.names(), (std::vector<std::string>{"a.fettle", "a.fettle.before-version-3"}));
  }
};

FETTLE_TEST(TestMigration)
#include "test_migration.moc"
