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
  evaluateAll(history, files);
  return MachineFile::create(path, history, imported->blobs);
}

}  // namespace fettle
