#include "ui/report/report_pages.h"

#include <QAbstractTextDocumentLayout>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextDocument>
#include <QTextObjectInterface>
#include <QTextTable>

#include "ui/charts/chart_scene.h"
#include "ui/report/report_html.h"
#include "ui/theme/look.h"

namespace fettle::ui {
namespace {

constexpr int chartObject = QTextFormat::UserObject + 1;
constexpr int chartIndex = QTextFormat::UserProperty + 1;
constexpr double chartShape = 0.56;  // height over width

/// Draws the charts that stand in the text as objects.
class ChartObjects : public QObject, public QTextObjectInterface {
  Q_OBJECT
  Q_INTERFACES(QTextObjectInterface)

 public:
  ChartObjects(std::vector<const Chart*> charts, double width, QObject* parent)
      : QObject(parent), m_charts(std::move(charts)), m_width(width) {}

  QSizeF intrinsicSize(QTextDocument*, int, const QTextFormat&) override {
    return {m_width, m_width * chartShape};
  }

  void drawObject(QPainter* painter, const QRectF& rect, QTextDocument*, int,
                  const QTextFormat& format) override {
    painter->save();
    paintChart(*painter, rect, *m_charts[static_cast<std::size_t>(format.intProperty(chartIndex))],
               Palette::print());
    painter->restore();
  }

 private:
  std::vector<const Chart*> m_charts;
  double m_width;
};

void fill(QTextDocument& document, const Report& report, double width) {
  std::vector<const Chart*> charts;
  QTextCursor cursor(&document);
  for (const auto& block : report.blocks) {
    cursor.movePosition(QTextCursor::End);
    if (const auto* chart = std::get_if<Chart>(&block)) {
      cursor.insertBlock(QTextBlockFormat(), QTextCharFormat());
      cursor.insertHtml(
          QStringLiteral("<b>%1</b>").arg(QString::fromStdString(chart->title).toHtmlEscaped()));
      cursor.insertBlock(QTextBlockFormat(), QTextCharFormat());
      QTextCharFormat object;
      object.setObjectType(chartObject);
      object.setProperty(chartIndex, static_cast<int>(charts.size()));
      charts.push_back(chart);
      cursor.insertText(QString(QChar::ObjectReplacementCharacter), object);
    } else {
      cursor.insertBlock(QTextBlockFormat(), QTextCharFormat());
      cursor.insertHtml(htmlOf(block));
    }
  }
  document.documentLayout()->registerHandler(chartObject, new ChartObjects(charts, width, &document));
}

void finishTables(QTextDocument& document) {
  for (auto* frame : document.rootFrame()->childFrames()) {
    if (auto* table = qobject_cast<QTextTable*>(frame)) {
      QTextTableFormat format = table->format();
      format.setHeaderRowCount(1);
      format.setBorderCollapse(true);
      format.setBorderBrush(Palette::print().line);
      format.setBorder(0.5);
      table->setFormat(format);
    }
  }
}

void paintMargins(QPainter& painter, const QRectF& page, double margin, const Report& report, int number,
                  int count) {
  QFont small = fontsOf().small;
  small.setPixelSize(7);  // one pixel of the layout is one point of the page
  painter.setFont(small);
  painter.setPen(Palette::print().dim);
  const QRectF top(margin, margin / 2, page.width() - 2 * margin, margin / 2 - 4);
  painter.drawText(top, Qt::AlignLeft | Qt::AlignTop, QString::fromStdString(report.machine));
  painter.drawText(top, Qt::AlignRight | Qt::AlignTop, QString::fromStdString(report.title));
  const QRectF bottom(margin, page.height() - margin + 6, page.width() - 2 * margin, margin / 2);
  painter.drawText(bottom, Qt::AlignLeft | Qt::AlignTop,
                   QStringLiteral("%1 · %2").arg(QString::fromStdString(report.date),
                                                 QString::fromStdString(report.program)));
  painter.drawText(bottom, Qt::AlignRight | Qt::AlignTop,
                   QCoreApplication::translate("Report", "page %1 of %2").arg(number).arg(count));
}

}  // namespace

bool paintPages(QPagedPaintDevice& device, const Report& report) {
  QPainter painter;
  if (!painter.begin(&device)) {
    return false;
  }
  // Points as the unit, so that type and lines have the same size on every device.
  const double scale = device.logicalDpiX() / 72.0;
  const QRectF page(0, 0, device.width() / scale, device.height() / scale);
  constexpr double margin = 48;
  const QSizeF body(page.width() - 2 * margin, page.height() - 2 * margin);
  QTextDocument document;
  document.documentLayout()->setPaintDevice(nullptr);
  document.setDocumentMargin(0);
  QFont font = fontsOf(9).base;
  font.setPixelSize(9);  // one pixel of the layout is one point of the page
  document.setDefaultFont(font);
  document.setDefaultStyleSheet(
      "h1{font-size:17px} h2{font-size:13px} h3{font-size:10px} th{font-weight:600}");
  fill(document, report, body.width());
  finishTables(document);
  document.setPageSize(body);
  const int count = document.pageCount();
  for (int i = 0; i < count; ++i) {
    if (i > 0) {
      device.newPage();
    }
    painter.save();
    painter.scale(scale, scale);
    paintMargins(painter, page, margin, report, i + 1, count);
    painter.translate(margin, margin - i * body.height());
    QAbstractTextDocumentLayout::PaintContext context;
    context.clip = QRectF(0, i * body.height(), body.width(), body.height());
    context.palette.setColor(QPalette::Text, Palette::print().text);
    painter.setClipRect(context.clip);
    document.documentLayout()->draw(&painter, context);
    painter.restore();
  }
  return painter.end();
}

}  // namespace fettle::ui

#include "report_pages.moc"
