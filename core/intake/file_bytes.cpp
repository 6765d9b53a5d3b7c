#include "core/intake/file_bytes.h"

#include <algorithm>
#include <fstream>

namespace fettle {

Intake<std::string> readFileBytes(const std::filesystem::path& path) {
  constexpr std::size_t kPiece = 65536;
  std::error_code error;
  std::ifstream file(path, std::ios::binary);
  if (!file || std::filesystem::is_directory(path, error)) {
    return refusal::cannotOpen(path.string());
  }
  // One byte more than the file has, so that its end is met in the first reading; a pipe has no size.
  const bool regular = std::filesystem::is_regular_file(path, error);
  const auto size = regular ? std::filesystem::file_size(path, error) : 0;
  std::string bytes(error ? kPiece : size + 1, '\0');
  std::size_t filled = 0;
  while (file) {
    bytes.resize(std::max(bytes.size(), filled == bytes.size() ? filled + kPiece : filled));
    file.read(bytes.data() + filled, static_cast<std::streamsize>(bytes.size() - filled));
    filled += static_cast<std::size_t>(file.gcount());
  }
  if (file.bad()) {
    return refusal::cannotOpen(path.string());
  }
  bytes.resize(filled);
  return bytes;
}

}  // namespace fettle
