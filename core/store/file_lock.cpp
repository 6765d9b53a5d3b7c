#include "core/store/file_lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>

#include "core/store/file_on_disk.h"

namespace fettle {

FileLock::~FileLock() {
  if (m_descriptor >= 0) {
    ::unlink(m_path.c_str());  // while still held: see take()
    ::close(m_descriptor);
  }
}

FileLock::Outcome FileLock::take(const std::string& path) {
  m_path = path + ".lock";
  for (;;) {
    const int descriptor = ::open(m_path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
    if (descriptor < 0) {
      return Outcome::notPossible;
    }
    if (::flock(descriptor, LOCK_EX | LOCK_NB) != 0) {
      const bool other = errno == EWOULDBLOCK;
      ::close(descriptor);
      return other ? Outcome::heldByOther : Outcome::notPossible;
    }
    if (identityOf(m_path) == identityOf(descriptor)) {
      m_descriptor = descriptor;
      return Outcome::taken;
    }
    ::close(descriptor);  // its holder removed the file between our opening and our locking: once more
  }
}

}  // namespace fettle
