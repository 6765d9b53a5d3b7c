#include "tests/core/store/store_bench.h"

#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Database.h>

#include <QRegularExpression>
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "core/history/evaluation.h"

namespace fettle::tests {

Folder::Folder() {
  // QTemporaryDir is private to its owner; the tests of permissions go in as somebody else.
  std::filesystem::permissions(m_folder.path().toStdString(), std::filesystem::perms(0755));
}

std::string Folder::path(const std::string& name) const {
  return m_folder.filePath(QString::fromStdString(name)).toStdString();
}

std::vector<std::string> Folder::names() const {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(m_folder.path().toStdString())) {
    names.push_back(entry.path().filename().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

Evaluated someResult(const std::string& step, double value) {
  Evaluated evaluated;
  StepResult& result = evaluated.result;
  result.step = step;
  result.give(ResultId{"found", "mm", {}}, Quantity{value, "mm", 1.0 / 3.0, 4.7, value - 0.1, value + 0.3});
  result.give(ResultId{"counted", "1", {}}, 12);
  result.withhold(ResultId{"unknown", "Hz", {}}, "There are too few readings: ä, 测, 🛠.");
  result.give(TextId{"word", {}, {}}, "two\nlines\t\"quoted\"");
  result.propose(SettingId{"x.acceleration", "mm/s2", {}},
                 Quantity{3200.0 / 7.0, "mm/s2", 0.1, 11.0, {}, {}});
  result.settings.back().asFound = {2500.0, ""};
  result.settings.back().inForce = {2600.0, ""};
  result.propose(SettingId{"shaper", {}, {}}, "zero vibration");
  result.addFinding("too-few", Severity::caution, "Only 3 readings – U is wide.", "probe-position");
  result.judgements.push_back({"found", Verdict::undecided, {}, 0});
  Chart chart;
  chart.view = "plan";
  chart.title = "Plan";
  chart.x = {"x", "mm", false};
  chart.y = {"y", "mm", false};
  chart.series.push_back({"readings", SeriesRole::measured, {0.1, 0.2}, {1.0 / 3.0, -5e-324}, {}, 2});
  chart.whenEmpty = "Enter a reading.";
  result.charts.push_back(chart);
  evaluated.with = {{"sheet", {{"nozzle_mm", 0.4}}}, {"as_found", nullptr}};
  evaluated.inputsHash = std::string(64, 'a');
  evaluated.programVersion = "0.1";
  return evaluated;
}

History fullHistory() {
  History history;
  MachineRecord& machine = history.machine;
  machine.sheet = {{"name", "Bänk № 3 – 测试 🛠"},
                   {"nozzle_mm", 0.1 + 0.2},
                   {"serial", ""},
                   {"hot_end_liner", false},
                   {"bed_max_C", 110},
                   {"x.pitch_mm", 1e-300},
                   {"location", nullptr},
                   {"list", {1, "two", nullptr}}};
  machine.asFound["x.acceleration"] = {{1.7976931348623157e308, ""}, "2026-11-25T14:05:00", "typed"};
  machine.asFound["shaper"] = {{std::nullopt, "none"}, "", ""};
  machine.asFound["blank"] = {};
  machine.instruments = {instruments::caliper(), {"zweite Uhr", 0.01, 0.013, 1.0 / 3.0, "mm"}};
  machine.instruments.push_back({"micrometer", 0.001, 0.004, 0, "mm", "M-17", "2026-02-03"});
  machine.checksum = std::string(64, 'c');
  machine.tolerances["probe-position.offset"] = {-0.1, std::nullopt};
  machine.tolerances["bed-shape.flatness"] = {std::nullopt, 0.15};
  history.changes = {{2, "2026-11-25T14:05:00", "nozzle", "brass → steel"},
                     {3, "", "belts", "", "2026-11-26T08:00:00", "sum"}};
  history.sessions.push_back({4, "2026-11-25T15:00:00", "Ada", "Inbetriebnahme", "PETG", 12.5, 1e-9});
  history.sessions.back().timeZone = "+01:00";
  history.sessions.back().reports = {{1, "2026-11-25T17:00:00", std::string(64, 'd')}, {2, "", ""}};
  StepRun first{5, 4, "probe-position", "", Json::object(), "", "2026-11-25T16:00:00", {}};
  first.notes = std::string("one\ntwo\0three", 13);
  first.inputs = {{"marks", {{{"x", 0.1}, {"y", nullptr}, {"word", "ö"}}, Json::object()}},
                  {"margin", 5e-324},
                  {"flag", true},
                  {"whole", 9007199254740993},
                  {"capture", {{"file", "run 1.csv"}, {"sha256", std::string(64, 'b')}}}};
  first.adopted = {{"probe.x", {-31.700000000000003, ""}, "mm", 0.02, 0.05, "2026-11-25T16:01:00"},
                   {"shaper", {std::nullopt, "double"}, "", std::nullopt, std::nullopt, "2026-11-25"}};
  first.adopted[0].proposed = {-31.65, ""};
  first.adopted[0].reason = "read twice";
  first.adopted[0].enteredOn = "2026-11-25T16:05:00";
  first.measuredOn = "2026-11-25T15:30:00";
  first.role = RunRole::corrected;
  first.inForce = {{"probe.x", {-30.0, ""}}, {"shaper", {std::nullopt, "none"}}};
  first.acceptReason = "good enough for the frame";
  first.signedResult = signedForm(someResult("probe-position", 1.5).result);
  first.corrections = {{"2026-11-25T16:30:00", "margin", "50", "5", "typed a 0 too many"}};
  first.photos = {{"mark.jpg", std::string(64, 'e'), "the mark"}};
  first.piece = {{"name", "ladder"}, {"parameters", {{"height_mm", 20}}}};
  StepRun second{6, 4, "heater", "bed", Json::object(), "", "", {}};
  history.runs = {first, second};
  history.marks.push_back({7, 4, "resonance", StepMark::Kind::overridden, "Zeit knapp", "2026-11-25"});
  history.sessions.push_back({8, "2026-11-26T08:00:00", "", "", "", std::nullopt, 0});
  history.runs.push_back({9, 8, "probe-position", "x", {{"margin", -0.0}}, "", "", {}});
  history.marks.push_back({10, 8, "bed-shape", StepMark::Kind::notAffected, "", ""});
  return history;
}

History smallHistory() {
  History history;
  history.machine.sheet["name"] = "small";
  history.sessions.push_back({2, "2026-11-25T15:00:00", "Ada", "", "", std::nullopt, 0});
  history.runs.push_back({3, 2, "probe-position", "", {{"margin", 5}}, "as it was", "", {}});
  return history;
}

QString differences(const History& first, const History& second) {
  QString found;
  const auto compare = [&](bool same, const char* what) { found += same ? "" : QString(what) + "; "; };
  compare(first.machine == second.machine, "machine");
  compare(first.changes == second.changes, "part changes");
  compare(first.sessions == second.sessions, "sessions");
  compare(first.runs == second.runs, "runs");
  compare(first.marks == second.marks, "marks");
  const auto sameResult = [](const auto& a, const auto& b) {
    const Evaluated &x = a.second, &y = b.second;
    return a.first == b.first && toJson(x.result) == toJson(y.result) && x.problem == y.problem &&
           x.with == y.with && x.inputsHash == y.inputsHash && x.programVersion == y.programVersion;
  };
  compare(std::equal(first.evaluated.begin(), first.evaluated.end(), second.evaluated.begin(),
                     second.evaluated.end(), sameResult),
          "results");
  return found;
}

QString notOneSentence(const std::string& text) {
  const QString sentence = QString::fromStdString(text);
  static const QRegularExpression another("[.!?:] +[A-Z]");
  if (sentence.isEmpty() || sentence.contains('\n') || sentence.contains('{') || !sentence.endsWith('.') ||
      sentence.endsWith("..") || sentence.contains(another)) {
    return "not one sentence: " + sentence;
  }
  return {};
}

std::string bytesOf(const std::string& path) {
  std::ostringstream bytes;
  bytes << std::ifstream(path, std::ios::binary).rdbuf();
  return bytes.str();
}

void writeBytes(const std::string& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary) << bytes;
}

void runSql(const std::string& path, const std::string& sql) {
  SQLite::Database(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE).exec(sql);
}

std::string askSql(const std::string& path, const std::string& sql) {
  SQLite::Database database(path, SQLite::OPEN_READONLY);
  return database.execAndGet(sql).getString();
}

Change notesChange(const History& history, RecordId run, const std::string& notes) {
  StepRun after = *history.run(run);
  after.notes = notes;
  return {*history.run(run), after, "notes"};
}

Change addedRun(const History& history, RecordId session, const std::string& step) {
  StepRun run;
  run.id = history.nextId();
  run.session = session;
  run.step = step;
  return {std::nullopt, run, "new run"};
}

}  // namespace fettle::tests
