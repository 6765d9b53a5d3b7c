#pragma once
#include <QString>

#include "core/history/evaluation.h"
#include "core/intake/file_bytes.h"

namespace fettle::tests {

/// The files of a folder, named in inputs as they are called there.
inline IntakeFiles filesIn(const QString& folder) {
  return IntakeFiles([folder](const Json& reference) -> tl::expected<std::string, std::string> {
    const std::string name = reference.at("file").get<std::string>();
    auto bytes = readFileBytes(folder.toStdString() + "/" + name);
    if (!bytes) {
      return tl::unexpected(bytes.error().sentence);
    }
    return *bytes;
  });
}

}  // namespace fettle::tests
