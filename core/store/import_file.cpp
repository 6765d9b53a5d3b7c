#include "core/store/import_file.h"

#include "core/history/evaluation.h"

namespace fettle {

tl::expected<std::unique_ptr<MachineFile>, std::string> importFile(
    const Json& json,
    const std::function<tl::expected<std::string, std::string>(const std::string&)>& readFile,
    const std::string& path) {
  auto imported = importHistory(json, readFile);
  if (!imported) {
    return tl::unexpected(imported.error());
  }
  History& history = imported->history;
  IntakeFiles files([&](const Json& reference) -> tl::expected<std::string, std::string> {
    return imported->blobs.at(reference.at("sha256").get<std::string>()).bytes;
  });
  for (const StepRun& run : history.runs) {
    history.evaluated[run.id] = evaluateRun(history, run, files);
  }
  for (const StepRun& run : history.runs) {  // a later run may have read what was found
    if (Evaluated& evaluated = history.evaluated.at(run.id); usesOlderValues(evaluated, history, run)) {
      evaluated = evaluateRun(history, run, files);
    }
  }
  return MachineFile::create(path, history, imported->blobs);
}

}  // namespace fettle
