#include <cmath>
#include <filesystem>
#include <vector>

#include "app/batch/verbs.h"
#include "core/history/evaluation.h"
#include "core/intake/file_bytes.h"
#include "core/measure/text.h"
#include "core/store/exchange.h"
#include "core/store/files_check.h"
#include "core/store/history_form.h"
#include "core/store/import_file.h"
#include "core/store/machine_file.h"

namespace fettle::batch {
namespace {

std::unique_ptr<MachineFile> opened(const std::string& path, bool readOnly) {
  auto file = MachineFile::open(path, readOnly);
  if (!file) {
    throw Failure{file.error()};
  }
  return std::move(*file);
}

template <typename T>
T orFail(tl::expected<T, std::string> value) {
  if (!value) {
    throw Failure{value.error()};
  }
  if constexpr (!std::is_void_v<T>) {
    return std::move(*value);
  }
}

IntakeFiles filesOf(const MachineFile& file) {
  return IntakeFiles([&file](const Json& reference) { return file.blob(reference.value("sha256", "")); });
}

/// Whether two results say the same; numbers may differ in the last digits from one machine to another.
bool same(const Json& first, const Json& second) {
  if (first.is_number() && second.is_number()) {
    const double a = first.get<double>();
    const double b = second.get<double>();
    // Iterative fits end within about 1e-8 of each other when a library or compiler differs.
    return std::abs(a - b) <= 1e-6 * std::max({std::abs(a), std::abs(b), 1e-6});
  }
  if (first.type() != second.type() || first.size() != second.size()) {
    return false;
  }
  if (first.is_object()) {
    for (const auto& [key, value] : first.items()) {
      if (!second.contains(key) || !same(value, second[key])) {
        return false;
      }
    }
    return true;
  }
  if (first.is_array()) {
    return std::equal(first.begin(), first.end(), second.begin(), same);
  }
  return first == second;
}

Json comparable(const Evaluated& evaluated) {
  Json json = toJson(evaluated.result);
  json.erase("charts");
  json["problem"] = evaluated.problem;
  return json;
}

}  // namespace

std::string describeHistory() {
  return historySchema().dump(2);
}

std::string importFile(const std::string& json, const std::string& machineFile) {
  const std::filesystem::path folder = std::filesystem::path(json).parent_path();
  const auto readFile = [&](const std::string& path) {
    const std::filesystem::path named(path);
    auto bytes = readFileBytes(named.is_absolute() ? named : folder / named);
    return bytes ? tl::expected<std::string, std::string>(std::move(*bytes))
                 : tl::unexpected(bytes.error().sentence);
  };
  const auto file = orFail(fettle::importFile(readJson(json), readFile, machineFile));
  return say(Text::tr("The history is in {0}; sessions: {1}, step records: {2}."), machineFile,
             file->history().sessions.size(), file->history().runs.size());
}

std::string exportFile(const std::string& machineFile, const std::string& json) {
  const auto file = opened(machineFile, true);
  const std::filesystem::path target(json);
  const auto exported = exportHistory(file->history(), target.stem().string() + "-files");
  std::vector<std::string> losses = file->losses();
  std::size_t written = 0;
  for (const auto& one : exported.files) {
    const auto content = file->blob(one.sha256);
    if (!content) {  // of a damaged file all is taken out that can be read
      losses.push_back(content.error());
      continue;
    }
    const std::filesystem::path path = target.parent_path() / one.path;
    std::error_code problem;
    std::filesystem::create_directories(path.parent_path(), problem);
    writeBytes(path.string(), *content);
    ++written;
  }
  writeBytes(json, exported.json.dump(2) + "\n");
  std::string said = say(Text::tr("The history is in {0}, its files beside it: {1}."), json, written);
  for (const auto& loss : losses) {
    said += "\n" + loss;
  }
  return said;
}

std::string verify(const std::string& machineFile) {
  const auto file = opened(machineFile, true);
  if (!file->losses().empty()) {
    throw Failure{file->losses().front()};
  }
  if (file->readOnly() == ReadOnlyReason::damaged) {
    throw Failure{file->readOnlySentence()};
  }
  if (file->integrity() != "ok") {
    throw Failure{
        say(Text::tr("{0} is damaged; export what can be read, and go on with a copy made earlier."),
            machineFile)};
  }
  const FilesCheck check = checkFiles(machineFile, file->history());
  if (!check.damaged.empty()) {
    throw Failure{damageSentence(check.damaged)};
  }
  if (!check.unread.empty()) {
    throw Failure{
        say(Text::tr("Not all files in {0} could be read for the check; try again later."), machineFile)};
  }
  IntakeFiles files = filesOf(*file);
  std::size_t checked = 0;
  for (const StepRun& run : file->history().runs) {
    const auto stored = file->history().evaluated.find(run.id);
    if (stored == file->history().evaluated.end() || !isCurrent(stored->second, run)) {
      continue;
    }
    // With the values it was evaluated with, not with those of now.
    const Evaluated again = evaluatePrepared(prepareFromSnapshot(run, stored->second.with), files);
    if (!same(comparable(stored->second), comparable(again))) {
      throw Failure{
          say(Text::tr("The stored result of {0}, run {1}, does not come out again from its readings."),
              run.step, run.id)};
    }
    ++checked;
  }
  return say(Text::tr("{0} is sound; {1} of {2} results were computed again and agree."), machineFile,
             checked, file->history().evaluated.size());
}

}  // namespace fettle::batch
