#pragma once
#include <QByteArray>
#include <QTest>
#include <cmath>

namespace fettle::tests {

inline QByteArray nearMessage(double actual, double expected) {
  return QByteArray::number(actual, 'g', 12) + " instead of " + QByteArray::number(expected, 'g', 12);
}

}  // namespace fettle::tests

/// Fails the test when the two are further apart, and says both.
#define VERIFY_NEAR(actual, expected, tolerance)                                  \
  do {                                                                            \
    const double nearActual_ = (actual), nearExpected_ = (expected);              \
    QVERIFY2(std::abs(nearActual_ - nearExpected_) <= (tolerance),                \
             fettle::tests::nearMessage(nearActual_, nearExpected_).constData()); \
  } while (false)
