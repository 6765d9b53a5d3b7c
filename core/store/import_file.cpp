#include "core/store/import_file.h"

#include "core/history/evaluation.h"

namespace fettle {

tl::expected<std::unique_ptr<MachineFile>, std::string> importFile(
    const Json& json,
    const std::function<tl::expected<std::string, std::string>(const std::string&)>& readFile,
    const std::string& path) {
  const auto imported = importHistory(json, readFile);
  if (!imported) {
    return tl::unexpected(imported.error());
  }
  auto created = MachineFile::create(path, imported->history);
  if (!created) {
    return created;
  }
  MachineFile& file = **created;
  for (const auto& [hash, content] : imported->blobs) {
    if (const auto kept = file.addBlob(content.second, content.first); !kept) {
      return tl::unexpected(kept.error());
    }
  }
  IntakeFiles files([&file](const Json& reference) { return file.blob(reference.value("sha256", "")); });
  for (const StepRun& run : imported->history.runs) {
    file.hold(run.id, evaluateRun(file.history(), run, files));
  }
  for (const StepRun& run : imported->history.runs) {  // a later run may have read what was found
    if (usesOlderValues(file.history().evaluated.at(run.id), file.history(), run)) {
      file.hold(run.id, evaluateRun(file.history(), run, files));
    }
  }
  if (const auto kept = file.keep(); !kept) {
    return tl::unexpected(kept.error());
  }
  return created;
}

}  // namespace fettle
