#pragma once
#include <QTest>
#include <cmath>

/// Fails the test when the two are further apart, and says both.
#define VERIFY_NEAR(actual, expected, tolerance)                                                          \
  do {                                                                                                    \
    const double found = (actual), wanted = (expected);                                                   \
    QVERIFY2(                                                                                             \
        std::abs(found - wanted) <= (tolerance),                                                          \
        qPrintable(QString::number(found, 'g', 12) + " instead of " + QString::number(wanted, 'g', 12))); \
  } while (false)
