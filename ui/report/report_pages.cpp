#include "ui/report/report_pages.h"

#include <QCoreApplication>
#include <QPageLayout>
#include <QPagedPaintDevice>
#include <QPainter>

#include "ui/report/report_strips.h"
#include "ui/theme/palette.h"

namespace fettle::ui {
namespace {

constexpr double marginPart = 26;  // points of the page's head, and of its foot, inside the margins

/// What stands on every page.
void paintMargins(QPainter& painter, const QSizeF& page, const ReportType& type, const Report& report,
                  int number, int count) {
  const Palette& palette = Palette::print();
  const double hairline = type.points(0.5);
  const double part = type.points(marginPart);
  const QString machine = QString::fromStdString(report.machine);
  const QString title = QString::fromStdString(report.title);
  const QString origin =
      QString::fromStdString(report.date + (report.date.empty() ? "" : " · ") + report.program);
  const QString pageNumber = QCoreApplication::translate("Report", "page %1 of %2").arg(number).arg(count);
  painter.setFont(type.margin);
  painter.setPen(palette.dim);
  const QRectF head(0, 0, page.width(), part - type.points(8));
  const QRectF foot(0, page.height() - part + type.points(8), page.width(), part - type.points(8));
  painter.drawText(head, Qt::AlignLeft | Qt::AlignVCenter, machine);
  painter.drawText(head, Qt::AlignRight | Qt::AlignVCenter, title);
  painter.drawText(foot, Qt::AlignLeft | Qt::AlignVCenter, origin);
  painter.drawText(foot, Qt::AlignRight | Qt::AlignVCenter, pageNumber);
  painter.fillRect(QRectF(0, head.bottom(), page.width(), hairline), palette.line);
  painter.fillRect(QRectF(0, foot.top() - hairline, page.width(), hairline), palette.line);
}

}  // namespace

bool paintPages(QPagedPaintDevice& device, const Report& report) {
  device.setPageMargins(QMarginsF(18, 9, 18, 9), QPageLayout::Millimeter);
  QPainter painter;
  if (!painter.begin(&device)) {
    return false;
  }
  painter.setRenderHint(QPainter::Antialiasing);
  const ReportType type(device);
  const QSizeF page(device.width(), device.height());
  const double top = type.points(marginPart);
  const auto strips = stripsOf(report, page.width(), type);
  const auto places = placedOnPages(strips, page.height() - 2 * top);
  const int count = places.empty() ? 1 : places.back().page + 1;
  int number = 0;
  paintMargins(painter, page, type, report, 1, count);
  for (const auto& place : places) {
    if (place.page != number) {
      number = place.page;
      device.newPage();
      paintMargins(painter, page, type, report, number + 1, count);
    }
    painter.save();
    strips[place.strip].paint(painter, top + place.y);
    painter.restore();
  }
  return painter.end();
}

}  // namespace fettle::ui
