#include "tests/reference/scipy.h"

#include <QDir>
#include <QFile>
#include <QProcess>
#include <QTextStream>

namespace fettle::tests {

QString pythonWithSciPy() {
  QStringList folders = qEnvironmentVariable("PATH").split(QDir::listSeparator(), Qt::SkipEmptyParts);
  folders << "/usr/bin";
  for (const QString& folder : folders) {
    const QString python = QDir(folder).filePath("python3");
    if (!QFile::exists(python)) {
      continue;
    }
    QProcess process;
    process.start(python, {"-c", "import scipy.signal"});
    if (process.waitForFinished(60000) && process.exitStatus() == QProcess::NormalExit &&
        process.exitCode() == 0) {
      return python;
    }
  }
  return {};
}

std::optional<std::vector<double>> runPython(const QString& python, const QByteArray& script,
                                             const QStringList& arguments) {
  QProcess process;
  process.start(python, QStringList{"-c", QString::fromUtf8(script)} + arguments);
  if (!process.waitForFinished(120000) || process.exitCode() != 0) {
    qWarning().noquote() << process.readAllStandardError();
    return std::nullopt;
  }
  std::vector<double> numbers;
  for (const QByteArray& word : process.readAllStandardOutput().simplified().split(' ')) {
    if (!word.isEmpty()) {
      numbers.push_back(word.toDouble());
    }
  }
  return numbers;
}

void writeNumbers(const QString& path, std::span<const double> values) {
  QFile file(path);
  if (!file.open(QIODevice::WriteOnly)) {
    qFatal("cannot write %s", qPrintable(path));
  }
  QTextStream stream(&file);
  for (const double value : values) {
    stream << QByteArray::number(value, 'g', 17) << '\n';
  }
}

}  // namespace fettle::tests
