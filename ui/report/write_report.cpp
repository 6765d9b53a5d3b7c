#include "ui/report/write_report.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QFileInfo>
#include <QPageSize>
#include <QPdfWriter>

#include "core/report/build_report.h"
#include "ui/charts/chart_export.h"
#include "ui/report/report_html.h"
#include "ui/report/report_pages.h"

namespace fettle::ui {
namespace {

QByteArray pdfOf(const Report& report) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter writer(&buffer);
  writer.setPageSize(QPageSize(QPageSize::A4));
  writer.setPageMargins(QMarginsF(0, 0, 0, 0));
  writer.setResolution(288);
  writer.setTitle(QString::fromStdString(report.title + ": " + report.machine));
  writer.setCreator(QString::fromStdString(report.program));
  return paintPages(writer, report) ? bytes : QByteArray();
}

}  // namespace

tl::expected<void, QString> writeReportFile(const History& history, RecordId session, const QString& path) {
  const QString ending = QFileInfo(path).suffix().toLower();
  QByteArray content;
  if (ending == "csv") {
    content = QByteArray::fromStdString(reportAsCsv(history, session));
  } else if (ending == "html" || ending == "htm") {
    content = htmlPage(buildReport(history, session)).toUtf8();
  } else if (ending == "pdf") {
    content = pdfOf(buildReport(history, session));
  } else {
    return tl::unexpected(
        QCoreApplication::translate("Report", "%1: a report is written as .pdf, .html or .csv.").arg(path));
  }
  if (const auto problem = writeFile(path, content)) {
    return tl::unexpected(*problem);
  }
  return {};
}

}  // namespace fettle::ui
