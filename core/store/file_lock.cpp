#include "core/store/file_lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>

namespace fettle {

FileLock::~FileLock() {
  if (m_descriptor >= 0) {
    ::close(m_descriptor);  // the file stays: removing it would race with another opener
  }
}

FileLock::Outcome FileLock::take(const std::string& path) {
  m_descriptor =
      ::open((path + ".lock").c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);  // NOLINT: C interface
  if (m_descriptor < 0) {
    return Outcome::notPossible;
  }
  if (::flock(m_descriptor, LOCK_EX | LOCK_NB) == 0) {
    return Outcome::taken;
  }
  const bool other = errno == EWOULDBLOCK;
  ::close(m_descriptor);
  m_descriptor = -1;
  return other ? Outcome::heldByOther : Outcome::notPossible;
}

}  // namespace fettle
