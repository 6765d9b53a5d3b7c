#pragma once
#include <QFloat16>  // to compare JSON values asks about every kind of number that Qt knows
#include <QObject>
#include <functional>
#include <memory>

namespace fettle::tests {

/// Registers a Qt Test class under the stem of its file; the program runs the classes named on its
/// command line, or all of them.
struct Registration {
  Registration(const char* file, std::function<std::unique_ptr<QObject>()> make);
};

}  // namespace fettle::tests

/// At the end of a test file, before the moc include: FETTLE_TEST(ClassName)
#define FETTLE_TEST(Class)                                        \
  static const fettle::tests::Registration registrationOf##Class( \
      __FILE__, [] { return std::make_unique<Class>(); });

/// Whether speed is measured: in builds with optimisation and without sanitizers.
#if !defined(NDEBUG) || defined(__SANITIZE_ADDRESS__)
inline constexpr bool isSpeedMeasured = false;
#else
inline constexpr bool isSpeedMeasured = true;
#endif

/// Skips a test of speed in all other builds.
#define FETTLE_SPEED_ONLY()                                                              \
  if (!isSpeedMeasured) {                                                                \
    QSKIP("Speed is only measured in builds with optimization and without sanitizers."); \
  }
