#include "core/intake/file_bytes.h"

#include <fstream>

namespace fettle {

Intake<std::string> readFileBytes(const std::filesystem::path& path) {
  std::error_code error;
  const auto size =
      std::filesystem::is_regular_file(path, error) ? std::filesystem::file_size(path, error) : 0;
  std::ifstream file(path, std::ios::binary);
  if (error || !file) {
    return refusal::cannotOpen(path.string());
  }
  std::string bytes(size, '\0');
  file.read(bytes.data(), static_cast<std::streamsize>(size));
  bytes.resize(static_cast<std::size_t>(file.gcount()));
  // A pipe has no size beforehand.
  if (bytes.empty()) {
    file.clear();
    bytes.assign(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
  }
  if (file.bad()) {
    return refusal::cannotOpen(path.string());
  }
  return bytes;
}

}  // namespace fettle
