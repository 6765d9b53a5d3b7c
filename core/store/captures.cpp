#include "core/store/captures.h"

#include <SQLiteCpp/Statement.h>

#include <algorithm>
#include <map>

#include "core/history/evaluation.h"
#include "core/measure/text.h"
#include "core/steps/catalogue.h"
#include "core/store/database.h"
#include "core/store/exchange.h"

namespace fettle {
namespace {

std::string placeOf(const History& history, const StepRun& run) {
  const Step* step = findStep(run.step);
  const Session* session = history.session(run.session);
  return say(Text::tr("{0} of {1}"), step ? step->name : run.step,
             session ? session->date.substr(0, 10) : std::string());
}

/// What a history refers to, by hash.
std::map<std::string, DamagedCapture> capturesOf(const History& history) {
  std::map<std::string, DamagedCapture> captures;
  for (const StepRun& run : history.runs) {
    Json inputs = run.inputs;
    eachFileReference(inputs, [&](Json& reference) {
      const auto hash = reference.find("sha256");
      if (hash == reference.end() || !hash->is_string()) {
        return;
      }
      DamagedCapture& capture = captures[hash->get<std::string>()];
      capture.name = reference["file"].get<std::string>();
      const std::string place = placeOf(history, run);
      if (std::find(capture.usedBy.begin(), capture.usedBy.end(), place) == capture.usedBy.end()) {
        capture.usedBy.push_back(place);
      }
    });
  }
  return captures;
}

bool isSound(SQLite::Database& database, const std::string& hash) {
  std::string bytes;
  try {
    SQLite::Statement row(database, "SELECT bytes FROM blobs WHERE sha256=?");
    row.bind(1, hash);
    if (!row.executeStep()) {
      return false;
    }
    bytes = row.getColumn(0).getString();
  } catch (const SQLite::Exception& problem) {
    return isBusy(problem);
  }
  return sha256(bytes) == hash;  // after the statement has let go of the file
}

std::string joined(const std::vector<std::string>& parts) {
  std::string all;
  for (const auto& part : parts) {
    all += (all.empty() ? "" : ", ") + part;
  }
  return all;
}

}  // namespace

std::vector<DamagedCapture> damagedCaptures(const std::string& path, const History& history,
                                            const std::function<bool()>& stopped) {
  std::vector<DamagedCapture> damaged;
  const auto captures = capturesOf(history);
  if (captures.empty()) {
    return damaged;
  }
  try {
    SQLite::Database database = connectForReading(path);
    for (const auto& [hash, capture] : captures) {
      if (stopped && stopped()) {
        break;
      }
      if (!isSound(database, hash)) {
        damaged.push_back(capture);
      }
    }
  } catch (const SQLite::Exception&) {
    // The file cannot be opened at all: whoever has it open says so.
  }
  return damaged;
}

std::string damageSentence(const std::vector<DamagedCapture>& captures) {
  if (captures.empty()) {
    return {};
  }
  if (captures.size() == 1) {
    return say(Text::tr("The capture {0} is damaged: its readings are lost; what was computed of it ({1}) "
                        "stays but cannot be computed again."),
               captures[0].name, joined(captures[0].usedBy));
  }
  std::vector<std::string> parts;
  for (const auto& capture : captures) {
    parts.push_back(capture.name + " (" + joined(capture.usedBy) + ")");
  }
  return say(Text::tr("These captures are damaged and their readings lost: {0}; what was computed of them "
                      "stays but cannot be computed again."),
             joined(parts));
}

}  // namespace fettle
