#pragma once
#include <QByteArray>
#include <QTest>
#include <algorithm>
#include <cmath>

namespace fettle::tests {

/// Matching significant digits, -log10 of the relative error (of the error itself where zero is expected),
/// 0 to 15: the log relative error of the NIST Statistical Reference Datasets.
inline double matchingDigits(double computed, double expected) {
  if (!std::isfinite(computed)) {
    return 0;
  }
  const double error = std::abs(computed - expected) / (expected == 0 ? 1 : std::abs(expected));
  return error == 0 ? 15 : std::clamp(-std::log10(error), 0.0, 15.0);
}

inline QByteArray digitsMessage(const char* what, double computed, double expected) {
  return QByteArray(what) + ": " + QByteArray::number(computed, 'g', 17) + " expected " +
         QByteArray::number(expected, 'g', 17) + ", " +
         QByteArray::number(matchingDigits(computed, expected), 'f', 1) + " digits";
}

}  // namespace fettle::tests

/// Fails the test when fewer digits match.
#define VERIFY_DIGITS(what, computed, expected, digits)                       \
  QVERIFY2(fettle::tests::matchingDigits((computed), (expected)) >= (digits), \
           fettle::tests::digitsMessage((what), (computed), (expected)).constData())
