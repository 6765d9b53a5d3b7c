#pragma once
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>

#include "tests/reference/scipy.h"

namespace fettle::tests {

/// Runs a Python program with numpy as np and scipy at hand: it gets JSON `data` and sets `result`.
/// Nothing when there is no Python with SciPy; empty, with a warning, when the program fails.
inline std::optional<QJsonObject> runScipy(const QString& program, const QJsonObject& data) {
  const QString python = pythonWithSciPy();
  if (python.isEmpty()) {
    return std::nullopt;
  }
  const QString script =
      QStringLiteral("import sys, json\nimport numpy as np\nimport scipy\ndata = json.load(sys.stdin)\n") +
      program + QStringLiteral("\njson.dump(result, sys.stdout)\n");
  QProcess process;
  process.start(python, {QStringLiteral("-c"), script});
  process.write(QJsonDocument(data).toJson(QJsonDocument::Compact));
  process.closeWriteChannel();
  if (!process.waitForFinished(120000) || process.exitCode() != 0) {
    qWarning("%s", process.readAllStandardError().constData());
    return QJsonObject();
  }
  return QJsonDocument::fromJson(process.readAllStandardOutput()).object();
}

}  // namespace fettle::tests
