#pragma once
#include <QJsonArray>
#include <QJsonObject>
#include <QTest>
#include <optional>
#include <span>
#include <vector>

namespace fettle::tests {

/// Runs a Python program with numpy as np at hand: it gets JSON `data` and sets `result`. Nothing when
/// there is no Python with SciPy on the PATH or in /usr/bin; empty, with a warning, when the program fails.
std::optional<QJsonObject> runScipy(const QString& program, const QJsonObject& data);

QJsonArray toJson(std::span<const double> values);
std::vector<double> numbersOf(const QJsonValue& array);

}  // namespace fettle::tests

#define SKIP_WITHOUT_SCIPY(answer)                                            \
  if (!(answer)) {                                                            \
    QSKIP("there is no Python with SciPy here; it is the outside reference"); \
  }
