#include "core/store/file_on_disk.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cstring>
#include <filesystem>
#include <fstream>

#include "core/measure/text.h"
#include "core/store/schema.h"

namespace fettle {
namespace {

constexpr std::size_t headerSize = 100;
constexpr std::size_t userVersionAt = 60;
constexpr std::size_t applicationIdAt = 68;

std::int32_t bigEndian(const std::array<char, headerSize>& bytes, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    value = (value << 8) | static_cast<unsigned char>(bytes[at + i]);
  }
  return static_cast<std::int32_t>(value);
}

void syncFolderOf(const std::string& path) {
  const std::string folder = std::filesystem::path(path).parent_path().string();
  const int descriptor = ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor >= 0) {
    ::fsync(descriptor);  // not every file system can; then there is nothing more to do
    ::close(descriptor);
  }
}

}  // namespace

tl::expected<int, std::string> formatVersionOf(const std::string& path) {
  std::error_code problem;
  const auto status = std::filesystem::status(path, problem);
  if (!std::filesystem::exists(status)) {
    return tl::unexpected(say(Text::tr("{0} is not there."), path));
  }
  const auto noMachineFile = [&] {
    return tl::unexpected(say(Text::tr("{0} is not a machine file; it was left as it is."), path));
  };
  if (!std::filesystem::is_regular_file(status)) {
    return noMachineFile();
  }
  std::ifstream file(path, std::ios::binary);
  if (!file) {
    return tl::unexpected(say(Text::tr("There is no permission to read {0}."), path));
  }
  std::array<char, headerSize> head{};
  file.read(head.data(), head.size());
  constexpr char magic[] = "SQLite format 3";  // with the zero at its end
  if (file.gcount() != headerSize || std::memcmp(head.data(), magic, sizeof magic) != 0 ||
      bigEndian(head, applicationIdAt) != applicationId) {
    return noMachineFile();
  }
  return bigEndian(head, userVersionAt);
}

bool mayWrite(const std::string& path) {
  return ::faccessat(AT_FDCWD, path.c_str(), W_OK, AT_EACCESS) == 0;
}

FileIdentity identityOf(const std::string& path) {
  struct stat status {};
  return ::stat(path.c_str(), &status) == 0 ? FileIdentity{status.st_dev, status.st_ino} : FileIdentity{};
}

FileIdentity identityOf(int descriptor) {
  struct stat status {};
  return ::fstat(descriptor, &status) == 0 ? FileIdentity{status.st_dev, status.st_ino} : FileIdentity{};
}

tl::expected<void, std::string> moveInto(const std::string& finished, const std::string& path) {
  std::error_code problem;
  std::filesystem::rename(finished, path, problem);
  if (problem) {
    removeDatabase(finished);
    return tl::unexpected(problem.message());
  }
  syncFolderOf(path);
  return {};
}

void removeDatabase(const std::string& path) {
  std::error_code ignored;
  std::filesystem::remove(path, ignored);
  std::filesystem::remove(path + "-journal", ignored);
}

}  // namespace fettle
