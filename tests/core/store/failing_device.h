#pragma once

namespace fettle::tests {

/// As long as it lives every SQLite file stands on a device that can be made to fail.
class FailingDevice {
 public:
  FailingDevice();
  ~FailingDevice();
  FailingDevice(const FailingDevice&) = delete;
  FailingDevice& operator=(const FailingDevice&) = delete;

  enum class Fault {
    full,    ///< writes find no room, everything else works
    broken,  ///< writes, syncs, truncations and removals fail
  };
  /// From the `at`-th operation on (from 1) the device fails, `once` or for good.
  void failFrom(int at, Fault fault, bool once);
  void repair();
  /// Whether anything has failed since failFrom().
  bool hasFailed() const;
};

}  // namespace fettle::tests
