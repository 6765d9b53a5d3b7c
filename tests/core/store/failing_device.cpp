#include "tests/core/store/failing_device.h"

#include <sqlite3.h>

#include <cstring>

namespace fettle::tests {
namespace {

// A file system for SQLite that hands everything on to the ordinary one and counts what changes a file.
// Syncs are counted but not handed on: nobody pulls the plug here, and hundreds of attempts would wait for
// the disk.

struct State {
  sqlite3_vfs* real = nullptr;
  int left = 0;  ///< operations until the fault; 0: none to come
  bool failing = false;
  bool once = false;
  bool failed = false;
  FailingDevice::Fault fault = FailingDevice::Fault::full;
} state;

struct File {
  sqlite3_file base;
  sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

sqlite3_file* real(sqlite3_file* file) {
  return reinterpret_cast<File*>(file)->real();
}

bool fails(bool isWrite) {
  if (state.fault == FailingDevice::Fault::full && !isWrite) {
    return false;
  }
  if (state.left > 0 && --state.left == 0) {
    state.failing = true;
  }
  const bool now = state.failing;
  state.failed = state.failed || now;
  state.failing = state.failing && !state.once;
  return now;
}

const sqlite3_io_methods methods = [] {
  sqlite3_io_methods m{};
  m.iVersion = 1;
  m.xClose = [](sqlite3_file* f) { return real(f)->pMethods->xClose(real(f)); };
  m.xRead = [](sqlite3_file* f, void* to, int count, sqlite3_int64 at) {
    return real(f)->pMethods->xRead(real(f), to, count, at);
  };
  m.xWrite = [](sqlite3_file* f, const void* from, int count, sqlite3_int64 at) {
    if (fails(true)) {
      return state.fault == FailingDevice::Fault::full ? SQLITE_FULL : SQLITE_IOERR_WRITE;
    }
    return real(f)->pMethods->xWrite(real(f), from, count, at);
  };
  m.xTruncate = [](sqlite3_file* f, sqlite3_int64 size) {
    return fails(false) ? SQLITE_IOERR_TRUNCATE : real(f)->pMethods->xTruncate(real(f), size);
  };
  m.xSync = [](sqlite3_file*, int) { return fails(false) ? SQLITE_IOERR_FSYNC : SQLITE_OK; };
  m.xFileSize = [](sqlite3_file* f, sqlite3_int64* size) {
    return real(f)->pMethods->xFileSize(real(f), size);
  };
  m.xLock = [](sqlite3_file* f, int kind) { return real(f)->pMethods->xLock(real(f), kind); };
  m.xUnlock = [](sqlite3_file* f, int kind) { return real(f)->pMethods->xUnlock(real(f), kind); };
  m.xCheckReservedLock = [](sqlite3_file* f, int* held) {
    return real(f)->pMethods->xCheckReservedLock(real(f), held);
  };
  m.xFileControl = [](sqlite3_file* f, int operation, void* argument) {
    return real(f)->pMethods->xFileControl(real(f), operation, argument);
  };
  m.xSectorSize = [](sqlite3_file* f) { return real(f)->pMethods->xSectorSize(real(f)); };
  m.xDeviceCharacteristics = [](sqlite3_file* f) {
    return real(f)->pMethods->xDeviceCharacteristics(real(f));
  };
  return m;
}();

int openFile(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* flagsOut) {
  const bool makes = (flags & SQLITE_OPEN_CREATE) != 0;
  file->pMethods = nullptr;
  if (makes && fails(false)) {
    return SQLITE_CANTOPEN;
  }
  const int result = state.real->xOpen(state.real, name, real(file), flags, flagsOut);
  if (real(file)->pMethods) {
    file->pMethods = &methods;
  }
  return result;
}

int deleteFile(sqlite3_vfs*, const char* name, int) {
  return fails(false) ? SQLITE_IOERR_DELETE : state.real->xDelete(state.real, name, 0);
}

sqlite3_vfs device;

}  // namespace

FailingDevice::FailingDevice() {
  state = {};
  state.real = sqlite3_vfs_find(nullptr);
  device = *state.real;
  device.zName = "failing";
  device.szOsFile = static_cast<int>(sizeof(File)) + state.real->szOsFile;
  device.xOpen = openFile;
  device.xDelete = deleteFile;
  sqlite3_vfs_register(&device, 1);
}

FailingDevice::~FailingDevice() {
  sqlite3_vfs_unregister(&device);
  sqlite3_vfs_register(state.real, 1);
}

void FailingDevice::failFrom(int at, Fault fault, bool once) {
  state.left = at;
  state.fault = fault;
  state.once = once;
  state.failing = false;
  state.failed = false;
}

void FailingDevice::repair() {
  state.left = 0;
  state.failing = false;
}

bool FailingDevice::hasFailed() const {
  return state.failed;
}

}  // namespace fettle::tests
