#include "core/store/files_check.h"

#include <SQLiteCpp/Database.h>

#include <QTest>

#include "core/history/evaluation.h"
#include "tests/core/store/store_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// Files taken in whose bytes were changed on the disk, which the check of the database does not see.
class TestFilesCheck : public QObject {
  Q_OBJECT

  /// A machine file with two captures of 100 kB, each used by a run.
  static std::string made(const Folder& folder) {
    const std::string path = folder.path("a.fettle");
    const auto file = MachineFile::create(path, smallHistory());
    for (const std::string name : {"front.csv", "back.csv"}) {
      const std::string bytes = name + std::string(100000, 'x');
      const auto hash = (*file)->addBlob(bytes, name);
      Change change = addedRun((*file)->history(), 2, "resonance");
      std::get<StepRun>(*change.after).inputs["captures"] = {
          {{"capture", {{"file", name}, {"sha256", *hash}}}}};
      if (!(*file)->apply(change)) {
        qFatal("the run was not taken");
      }
    }
    return path;
  }
  /// Changes one byte inside a capture.
  static void spoil(const std::string& path, const std::string& name) {
    std::string bytes = bytesOf(path);
    bytes[bytes.find(name + "xxx") + 300] = 'y';
    writeBytes(path, bytes);
  }

 private slots:
  void soundFilesSayNothing() {
    const Folder folder;
    const std::string path = made(folder);
    OPENED(file, MachineFile::open(path));
    QVERIFY(checkFiles(path, file->history()).damaged.empty());
    QVERIFY(damageSentence({}).empty());
  }

  void aDamagedFileIsNamed() {
    const Folder folder;
    const std::string path = made(folder);
    spoil(path, "front.csv");
    OPENED(file, MachineFile::open(path));
    QCOMPARE(file->integrity(), std::string("ok"));
    const auto damaged = checkFiles(path, file->history()).damaged;
    QCOMPARE(damaged.size(), 1U);
    QCOMPARE(damaged[0].name, std::string("front.csv"));
    const std::string sentence = damageSentence(damaged);
    ONE_SENTENCE(sentence);
    QVERIFY2(sentence.find("front.csv is damaged") != std::string::npos &&
                 sentence.find("Resonance of 2026-11-25") != std::string::npos,
             sentence.c_str());
    const std::string hash =
        file->history().runs.at(1).inputs["captures"][0]["capture"]["sha256"].get<std::string>();
    const auto bytes = file->blob(hash);
    QVERIFY(!bytes);
    ONE_SENTENCE(bytes.error());
    QVERIFY(bytes.error().find("front.csv") != std::string::npos);
  }

  void severalAreOneSentence() {
    const Folder folder;
    const std::string path = made(folder);
    spoil(path, "front.csv");
    spoil(path, "back.csv");
    OPENED(file, MachineFile::open(path));
    const std::string sentence = damageSentence(checkFiles(path, file->history()).damaged);
    ONE_SENTENCE(sentence);
    QVERIFY(sentence.find("front.csv") != std::string::npos &&
            sentence.find("back.csv") != std::string::npos);
    QVERIFY(checkFiles(path, file->history(), [] { return true; }).damaged.empty());  // stopped
  }

  /// Nothing is known of a file another program holds: neither that it is sound nor that it is damaged.
  void aFileInUseIsNeitherSoundNorDamaged() {
    const Folder folder;
    const std::string path = made(folder);
    OPENED(file, MachineFile::open(path));
    const History history = file->history();
    const std::string hash =
        history.runs.at(1).inputs["captures"][0]["capture"]["sha256"].get<std::string>();
    SQLite::Database other(path, SQLite::OPEN_READWRITE);
    other.exec("BEGIN EXCLUSIVE");
    const FilesCheck check = checkFiles(path, history);
    QCOMPARE(check.unread.size(), 2U);
    QVERIFY(check.damaged.empty());
    const auto bytes = file->blob(hash);
    QVERIFY(!bytes);
    ONE_SENTENCE(bytes.error());
    QVERIFY2(bytes.error().find("damaged") == std::string::npos, bytes.error().c_str());
    other.exec("ROLLBACK");
    QVERIFY(checkFiles(path, history).unread.empty());
    QVERIFY(file->blob(hash));
  }

  /// Every table but the list of tables is nonsense: one sentence, without words of the database.
  void aFileFullOfDamageIsOneSentence() {
    const Folder folder;
    const std::string path = folder.path("b.fettle");
    QVERIFY(MachineFile::create(path, fullHistory()));
    std::string bytes = bytesOf(path);
    std::fill(bytes.begin() + 8192, bytes.end(), '\xee');
    writeBytes(path, bytes);
    OPENED(file, MachineFile::open(path));
    QCOMPARE(file->losses().size(), 1U);
    ONE_SENTENCE(file->losses()[0]);
    QVERIFY2(file->losses()[0].find("malformed") == std::string::npos, file->losses()[0].c_str());
    QVERIFY2(file->losses()[0].find("the sessions") != std::string::npos, file->losses()[0].c_str());
  }
};

FETTLE_TEST(TestFilesCheck)
#include "test_files_check.moc"
