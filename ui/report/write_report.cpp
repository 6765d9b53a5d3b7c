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

constexpr int dotsPerInch = 600;

tl::expected<void, QString> write(const QString& path, const QByteArray& content) {
  if (const auto problem = writeFile(path, content)) {
    return tl::unexpected(*problem);
  }
  return {};
}

}  // namespace

tl::expected<void, QString> writePdf(const Report& report, const QString& path) {
  QBuffer pages;
  pages.open(QIODevice::WriteOnly);
  {
    QPdfWriter writer(&pages);
    writer.setPageSize(QPageSize(QPageSize::A4));
    writer.setResolution(dotsPerInch);
    writer.setTitle(QString::fromStdString(report.title + ": " + report.machine));
    writer.setCreator(QString::fromStdString(report.program));
    if (!paintPages(writer, report)) {
      return tl::unexpected(
          QCoreApplication::translate("Report", "%1: the pages could not be drawn.").arg(path));
    }
  }
  return write(path, pages.data());
}

tl::expected<void, QString> writeHtml(const Report& report, const QString& path) {
  return write(path, htmlPage(report).toUtf8());
}

tl::expected<void, QString> writeReportFile(const History& history, RecordId session, const QString& path) {
  const QString ending = QFileInfo(path).suffix().toLower();
  if (ending == QLatin1String("csv")) {
    return write(path, QByteArray::fromStdString(reportAsCsv(history, session)));
  }
  if (ending == QLatin1String("html") || ending == QLatin1String("htm")) {
    return writeHtml(buildReport(history, session), path);
  }
  if (ending == QLatin1String("pdf")) {
    return writePdf(buildReport(history, session), path);
  }
  return tl::unexpected(
      QCoreApplication::translate("Report", "%1: a report is written as .pdf, .html or .csv.").arg(path));
}

}  // namespace fettle::ui
