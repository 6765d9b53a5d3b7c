#include "tests/reference/scipy.h"

#include <QDir>
#include <QFile>
#include <QJsonDocument>
#include <QProcess>

namespace fettle::tests {
namespace {

QString pythonWithScipy() {
  QStringList folders = qEnvironmentVariable("PATH").split(QDir::listSeparator(), Qt::SkipEmptyParts);
  folders << "/usr/bin";
  for (const QString& folder : folders) {
    const QString python = QDir(folder).filePath("python3");
    if (!QFile::exists(python)) {
      continue;
    }
    QProcess process;
    process.start(python, {"-c", "import scipy"});
    if (process.waitForFinished(60000) && process.exitStatus() == QProcess::NormalExit &&
        process.exitCode() == 0) {
      return python;
    }
  }
  return {};
}

}  // namespace

std::optional<QJsonObject> runScipy(const QString& program, const QJsonObject& data) {
  static const QString python = pythonWithScipy();
  if (python.isEmpty()) {
    return std::nullopt;
  }
  const QString script =
      QStringLiteral("import sys, json\nimport numpy as np\ndata = json.load(sys.stdin)\n") + program +
      QStringLiteral("\njson.dump(result, sys.stdout)\n");
  QProcess process;
  process.start(python, {QStringLiteral("-c"), script});
  process.write(QJsonDocument(data).toJson(QJsonDocument::Compact));
  process.closeWriteChannel();
  if (!process.waitForFinished(120000) || process.exitStatus() != QProcess::NormalExit ||
      process.exitCode() != 0) {
    qWarning("%s", process.readAllStandardError().constData());
    return QJsonObject();
  }
  return QJsonDocument::fromJson(process.readAllStandardOutput()).object();
}

QJsonArray toJson(std::span<const double> values) {
  QJsonArray array;
  for (const double value : values) {
    array.append(value);
  }
  return array;
}

std::vector<double> numbersOf(const QJsonValue& array) {
  std::vector<double> numbers;
  for (const auto& value : array.toArray()) {
    numbers.push_back(value.toDouble());
  }
  return numbers;
}

}  // namespace fettle::tests
