#pragma once
#include <QByteArray>
#include <QDebug>
#include <QString>
#include <QStringList>
#include <optional>
#include <span>
#include <vector>

namespace fettle::tests {

/// Path of a Python that has SciPy, looked for on the PATH and in /usr/bin; empty when there is none.
QString pythonWithSciPy();

/// Runs a script with the given arguments and returns the numbers it prints, separated by white space;
/// nothing when it fails.
std::optional<std::vector<double>> runPython(const QString& python, const QByteArray& script,
                                             const QStringList& arguments);

/// Writes one number a line with all its digits.
void writeNumbers(const QString& path, std::span<const double> values);

}  // namespace fettle::tests
