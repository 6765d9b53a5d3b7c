#pragma once
#include <QDir>
#include <QFileInfo>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTest>

#include "core/report/report.h"
#include "ui/report/write_report.h"

namespace fettle::tests {

/// Whether the programs are there that read a PDF.
inline bool canReadPdf() {
  return !QStandardPaths::findExecutable("pdftotext").isEmpty() &&
         !QStandardPaths::findExecutable("pdfimages").isEmpty();
}

/// What a program of the machine says; nothing when it fails.
inline QString said(const QString& program, const QStringList& arguments) {
  QProcess process;
  process.start(program, arguments);
  const bool ended = process.waitForFinished() && process.exitStatus() == QProcess::NormalExit;
  return ended && process.exitCode() == 0 ? QString::fromUtf8(process.readAllStandardOutput()) : QString();
}

/// The text of each page of a PDF, by pdftotext; no pages when it cannot be read.
inline QStringList pagesOf(const QString& pdf) {
  QString text = said("pdftotext", {"-layout", pdf, "-"});
  text.replace(QChar::Nbsp, ' ').replace("ﬂ", "fl").replace("ﬁ", "fi");  // ligatures of the type
  QStringList pages = text.split('\f');
  pages.removeLast();
  return pages;
}

inline Chart madeCurve() {
  Chart chart;
  chart.title = "Made-up curve";
  chart.x = {"flow", "mm3/s"};
  chart.y = {"delivered", "1"};
  Series series;
  series.name = "measured";
  for (int i = 0; i < 40; ++i) {
    series.x.push_back(i);
    series.y.push_back(i < 25 ? 1 : 1 - 0.02 * (i - 25));
  }
  chart.series.push_back(series);
  return chart;
}

/// A report that only its blocks tell from others.
inline Report reportOf(ReportBlocks blocks) {
  return {"Commissioning report", "Test rig", "2026-03-01", "Fettle 9.8.7", std::move(blocks)};
}

inline ReportTable longTable(int rows) {
  ReportTable table;
  table.columns = {{"#", true}, {"Reading head", true}, {"Remark", false}};
  for (int i = 1; i <= rows; ++i) {
    table.rows.push_back({{std::to_string(i), "value-" + std::to_string(i), "plain"}, false});
  }
  return table;
}

}  // namespace fettle::tests
