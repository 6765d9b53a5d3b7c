#include "core/store/files_check.h"

#include <fmt/ranges.h>

#include <algorithm>
#include <map>

#include "core/history/intake_reference.h"
#include "core/measure/text.h"
#include "core/steps/catalogue.h"
#include "core/store/blobs.h"
#include "core/store/database.h"

namespace fettle {
namespace {

std::string placeOf(const History& history, const StepRun& run) {
  const Session* session = history.session(run.session);
  return say(Text::tr("{0} of {1}"), stepName(run.step),
             session ? session->date.substr(0, 10) : std::string());
}

/// What a history refers to, by hash.
std::map<std::string, UsedFile> filesOf(const History& history) {
  std::map<std::string, UsedFile> files;
  for (const StepRun& run : history.runs) {
    eachFileReference(run.inputs, [&](const Json& reference) {
      const auto hash = reference.find("sha256");
      if (hash == reference.end() || !hash->is_string()) {
        return;
      }
      UsedFile& file = files[hash->get<std::string>()];
      file.name = reference["file"].get<std::string>();
      const std::string place = placeOf(history, run);
      if (std::find(file.usedBy.begin(), file.usedBy.end(), place) == file.usedBy.end()) {
        file.usedBy.push_back(place);
      }
    });
  }
  return files;
}

FilesCheck allUnread(const std::map<std::string, UsedFile>& files) {
  FilesCheck check;
  for (const auto& [hash, file] : files) {
    check.unread.push_back(file);
  }
  return check;
}

}  // namespace

FilesCheck checkFiles(const std::string& path, const History& history,
                      const std::function<bool()>& stopped) {
  const auto files = filesOf(history);
  if (files.empty()) {
    return {};
  }
  try {
    SQLite::Database database = connectForReading(path);
    FilesCheck check;
    for (const auto& [hash, file] : files) {
      if (stopped && stopped()) {
        break;
      }
      const BlobState state = readBlob(database, hash).state;
      if (state == BlobState::unread) {
        check.unread.push_back(file);
      } else if (state != BlobState::sound) {
        check.damaged.push_back(file);
      }
    }
    return check;
  } catch (const SQLite::Exception&) {  // the machine file cannot even be opened
    return allUnread(files);
  }
}

std::string damageSentence(const std::vector<UsedFile>& damaged) {
  if (damaged.empty()) {
    return {};
  }
  if (damaged.size() == 1) {
    return say(Text::tr("The file {0} is damaged: its readings are lost; what was computed of it ({1}) "
                        "stays but cannot be computed again."),
               damaged[0].name, fmt::join(damaged[0].usedBy, ", "));
  }
  std::vector<std::string> parts;
  for (const auto& file : damaged) {
    parts.push_back(fmt::format("{} ({})", file.name, fmt::join(file.usedBy, ", ")));
  }
  return say(Text::tr("These files are damaged and their readings lost: {0}; what was computed of them "
                      "stays but cannot be computed again."),
             fmt::join(parts, ", "));
}

}  // namespace fettle
