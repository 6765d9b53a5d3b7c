#pragma once
#include <string>

namespace fettle {

/// Says that this program may write a machine file: an advisory lock on "<file>.lock". The system lets it
/// go when the process ends in whatever way, so a lock file left behind by a killed process is no obstacle.
class FileLock {
 public:
  FileLock() = default;
  ~FileLock();
  FileLock(const FileLock&) = delete;
  FileLock& operator=(const FileLock&) = delete;

  enum class Outcome { taken, heldByOther, notPossible };
  Outcome take(const std::string& path);

 private:
  std::string m_path;
  int m_descriptor = -1;
};

}  // namespace fettle
