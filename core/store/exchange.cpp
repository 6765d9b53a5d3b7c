#include "core/store/exchange.h"

#include <algorithm>
#include <filesystem>
#include <map>

#include "core/history/evaluation.h"
#include "core/history/intake_reference.h"
#include "core/measure/text.h"
#include "core/store/history_form.h"
#include "core/store/record_json.h"

namespace fettle {
namespace {

/// Gives records ids in the order of the text, and missing dates the date of their session.
class Numbering {
 public:
  RecordId next() { return ++m_last; }

 private:
  RecordId m_last = 1;  // the machine has id 1
};

void fillDates(StepRun& run, const Json& json, const std::string& sessionDate) {
  if (run.acceptedOn.empty() && json.value("state", "open") == "accepted") {
    run.acceptedOn = sessionDate;
  }
  for (auto& adoption : run.adopted) {
    if (adoption.date.empty()) {
      adoption.date = run.acceptedOn.empty() ? sessionDate : run.acceptedOn;
    }
  }
}

History recordsFrom(const Json& json) {
  History history;
  Numbering ids;
  history.machine = machineFromJson(json.at("machine"));
  for (const auto& instrument : json.value("instruments", Json::array())) {
    history.machine.instruments.push_back(instrumentFromJson(instrument));
  }
  for (const auto& change : json.value("changes", Json::array())) {
    history.changes.push_back(partChangeFromJson(change));
    history.changes.back().id = ids.next();
  }
  for (const auto& given : json.value("sessions", Json::array())) {
    Session session = sessionFromJson(given);
    session.id = ids.next();
    for (const auto& one : given.value("runs", Json::array())) {
      StepRun run = runFromJson(one);
      run.id = ids.next();
      run.session = session.id;
      fillDates(run, one, session.date);
      history.runs.push_back(std::move(run));
    }
    for (const auto& one : given.value("marks", Json::array())) {
      StepMark mark = markFromJson(one);
      mark.id = ids.next();
      mark.session = session.id;
      history.marks.push_back(std::move(mark));
    }
    history.sessions.push_back(std::move(session));
  }
  return history;
}

}  // namespace

ExportedHistory exportHistory(const History& history, const std::string& folder) {
  ExportedHistory exported;
  std::map<std::string, std::string> paths;
  const auto place = [&](Json& reference) {
    if (!reference.contains("sha256")) {
      return;
    }
    const auto hash = reference["sha256"].get<std::string>();
    auto [known, isNew] = paths.try_emplace(
        hash, folder + "/" + hash.substr(0, 12) + "/" + reference["file"].get<std::string>());
    if (isNew) {
      exported.files.push_back({known->second, hash});
    }
    reference["file"] = known->second;
  };

  Json& json = exported.json;
  json = {{"fettle", 1},
          {"machine", toJson(history.machine)},
          {"instruments", Json::array()},
          {"changes", Json::array()},
          {"sessions", Json::array()},
          {"files", Json::array()}};
  for (const auto& instrument : history.machine.instruments) {
    json["instruments"].push_back(toJson(instrument));
  }
  for (const auto& change : history.changes) {
    json["changes"].push_back(toJson(change));
  }
  for (const auto& session : history.sessions) {
    Json one = toJson(session);
    one["runs"] = Json::array();
    one["marks"] = Json::array();
    for (StepRun run : history.runs) {
      if (run.session == session.id) {
        eachFileReference(run.inputs, place);
        one["runs"].push_back(toJson(run));
      }
    }
    for (const auto& mark : history.marks) {
      if (mark.session == session.id) {
        one["marks"].push_back(toJson(mark));
      }
    }
    json["sessions"].push_back(std::move(one));
  }
  for (const auto& file : exported.files) {
    json["files"].push_back({{"file", file.path}, {"sha256", file.sha256}});
  }
  return exported;
}

tl::expected<ImportedHistory, std::string> importHistory(
    const Json& json,
    const std::function<tl::expected<std::string, std::string>(const std::string&)>& readFile) {
  if (!json.is_object() || json.value("fettle", Json()) != Json(1)) {
    return tl::unexpected(Text::tr("This is no history of a machine: {\"fettle\": 1, ...} is expected."));
  }
  if (auto problem = problemOfHistory(json)) {
    return tl::unexpected(std::move(*problem));
  }
  ImportedHistory imported;
  imported.history = recordsFrom(json);
  std::string failed;
  const auto take = [&](Json& reference) {
    const auto path = reference["file"].get<std::string>();
    const auto bytes = readFile(path);
    if (!bytes) {
      failed = failed.empty() ? bytes.error() : failed;
      return;
    }
    const std::string hash = sha256(*bytes);
    if (reference.contains("sha256") && reference["sha256"] != Json(hash) && failed.empty()) {
      failed = say(Text::tr("{0} is not the file the history speaks of: its content has changed."), path);
    }
    reference["sha256"] = hash;
    reference["file"] = std::filesystem::path(path).filename().string();
    imported.blobs[hash] = {reference["file"].get<std::string>(), *bytes};
  };
  for (auto& run : imported.history.runs) {
    eachFileReference(run.inputs, take);
  }
  if (!failed.empty()) {
    return tl::unexpected(failed);
  }
  return imported;
}

}  // namespace fettle
