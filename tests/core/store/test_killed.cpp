#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QElapsedTimer>
#include <QTest>
#include <fstream>
#include <random>

#include "tests/core/store/store_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// The next entry of a made-up user; the same random numbers and history give the same entry.
Change nextEntry(std::mt19937& random, const History& history) {
  const auto any = [&](std::size_t count) { return static_cast<std::size_t>(random()) % count; };
  const std::string text = "entry " + std::to_string(random()) + " ü测";
  const StepRun& run = history.runs[any(history.runs.size())];
  StepRun after = run;
  switch (any(8)) {
    case 0:
      return addedRun(history, history.sessions.back().id, "probe-position");
    case 1:
      return history.runs.size() > 20 ? Change{run, std::nullopt, ""} : notesChange(history, run.id, text);
    case 2:
      after.inputs["rows"].push_back({{"x", static_cast<double>(random()) / 7.0}, {"word", text}});
      return {run, after, ""};
    case 3:
      after.adopted.push_back({text, {0.1 * static_cast<double>(random()), ""}, "mm", {}, 0.3, text});
      return {run, after, ""};
    case 4:
      after.inputs["long"] = std::string(any(30000), 'l');  // over many pages
      return {run, after, ""};
    case 5: {
      MachineRecord machine = history.machine;
      machine.sheet[text.substr(0, 8)] = static_cast<double>(random()) / 3.0;
      return {history.machine, machine, ""};
    }
    case 6:
      return {std::nullopt, PartChange{history.nextId(), text, "nozzle", text}, ""};
    default:
      return notesChange(history, run.id, text);
  }
}

/// Whether a result is kept after an entry.
bool resultDue(std::mt19937& random) {
  return random() % 4 == 0;
}

/// What the child does until it is killed: enters data, and says so after each entry.
[[noreturn]] void enterData(const std::string& path, unsigned seed, int acknowledge) {
  auto file = MachineFile::open(path);
  std::mt19937 random(seed);
  while (file && (*file)->apply(nextEntry(random, (*file)->history()))) {
    const char mark = 'a';
    if (write(acknowledge, &mark, 1) != 1) {
      break;
    }
    if (resultDue(random)) {
      const StepRun& last = (*file)->history().runs.back();
      (*file)->hold(last.id, someResult(last.step, 1));
      if (!(*file)->keep()) {
        break;
      }
    }
  }
  _exit(1);
}

/// Starts a child, kills it after a while and returns how many entries it acknowledged; -1 when it ended
/// by itself.
int enterAndKill(const std::string& path, unsigned seed, useconds_t wait) {
  int pipes[2];
  if (pipe(pipes) != 0) {
    return -1;
  }
  const pid_t child = fork();
  if (child == 0) {
    close(pipes[0]);
    enterData(path, seed, pipes[1]);
  }
  close(pipes[1]);
  char marks[4096];
  // Most are killed when they are in the middle of their entries, every fourth at any moment, while it
  // opens the file too.
  auto count = seed % 4 == 0 ? 0 : read(pipes[0], marks, 1);
  usleep(wait);
  kill(child, SIGKILL);
  int status = 0;
  waitpid(child, &status, 0);
  for (auto more = read(pipes[0], marks, sizeof marks); more > 0;
       more = read(pipes[0], marks, sizeof marks)) {
    count += more;
  }
  close(pipes[0]);
  return WIFSIGNALED(status) ? static_cast<int>(count) : -1;
}

/// Whether a transaction was on its way into the file: the journal is there and has its header.
bool wasInTheMiddle(const std::string& path) {
  std::ifstream journal(path + "-journal", std::ios::binary);
  return journal.get() == 0xd9;  // "Database File Format", sqlite.org, 3: the first byte of a journal
}

}  // namespace

/// Entries go on in a process of their own, which is killed without warning: whatever it had called kept is
/// in the file afterwards, and the file is whole. The seed is fixed; where a kill lands is up to the
/// system.
class TestKilled : public QObject {
  Q_OBJECT

 private slots:
  void noAcknowledgedEntryIsLost() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    History known = smallHistory();
    QVERIFY(MachineFile::create(path, known));
    std::mt19937 random(20261125);
    int entries = 0, inTheMiddle = 0, unacknowledged = 0;
    for (unsigned round = 0; round < 200; ++round) {
      const int count = enterAndKill(path, round, static_cast<useconds_t>(random() % 80000));
      QVERIFY(count >= 0);
      entries += count;
      inTheMiddle += wasInTheMiddle(path) ? 1 : 0;

      std::mt19937 again(round);
      for (int i = 0; i < count; ++i) {
        apply(nextEntry(again, known), known);
        resultDue(again);
      }
      OPENED(file, MachineFile::open(path));
      QCOMPARE(file->readOnly(), ReadOnlyReason::none);
      QCOMPARE(file->integrity(), std::string("ok"));
      History found = file->history();
      for (const auto& [run, evaluated] : found.evaluated) {
        QVERIFY(found.run(run) && evaluated.result.step == found.run(run)->step);
      }
      known.evaluated = found.evaluated;
      if (!differences(found, known).isEmpty()) {  // one entry was in, but not yet acknowledged
        ++unacknowledged;
        apply(nextEntry(again, known), known);
        known.evaluated = found.evaluated;
      }
      SAME_HISTORY(found, known);
    }
    qInfo(
        "%d entries acknowledged; of 200 kills %d came in the middle of a write, %d before the word of a "
        "finished one",
        entries, inTheMiddle, unacknowledged);
    QVERIFY2(inTheMiddle > 0, "no kill came in the middle of a write: the test has shown nothing");
  }
};

FETTLE_TEST(TestKilled)
#include "test_killed.moc"
