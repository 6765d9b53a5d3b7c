#include "ui/charts/chart_export.h"

#include <QBuffer>
#include <QFileInfo>
#include <QImage>
#include <QPainter>
#include <QRegularExpression>
#include <QSaveFile>
#include <QSvgGenerator>

#include "ui/charts/chart_reading.h"
#include "ui/charts/chart_scene.h"
#include "ui/charts/chart_words.h"

namespace fettle::ui {
namespace {

constexpr int dotsPerInch = 96;
constexpr int pixelsPerDot = 2;  ///< of a picture, so that it can be printed

/// Title and description as a drawing's first elements. The generator's own are not escaped.
QByteArray withWords(QByteArray drawing, const QString& title, const QString& description) {
  const QString words = QStringLiteral("\n<title>%1</title>\n<desc>%2</desc>")
                            .arg(title.toHtmlEscaped(), description.toHtmlEscaped());
  const qsizetype begin = drawing.indexOf("<svg");
  return drawing.insert(drawing.indexOf('>', begin) + 1, words.toUtf8());
}

QByteArray svgOf(const Chart& chart, QSize size) {
  QBuffer buffer;
  QSvgGenerator generator;
  generator.setOutputDevice(&buffer);
  generator.setResolution(dotsPerInch);
  generator.setSize(size);
  generator.setViewBox(QRect(QPoint(), size));
  QPainter painter(&generator);
  paintChart(painter, QRectF(QPointF(), size), chart, Palette::print());
  painter.end();
  return withWords(buffer.data(), QString::fromStdString(chart.title),
                   chartSummary(chart, wholeView(chart)));
}

QByteArray pngOf(const Chart& chart, QSize size) {
  QImage image(size * pixelsPerDot, QImage::Format_RGB32);
  image.setDevicePixelRatio(pixelsPerDot);
  image.fill(Palette::print().panel);
  image.setText(QStringLiteral("Title"), QString::fromStdString(chart.title));
  image.setText(QStringLiteral("Description"), chartSummary(chart, wholeView(chart)));
  QPainter painter(&image);
  paintChart(painter, QRectF(QPointF(), size), chart, Palette::print());
  painter.end();
  QBuffer buffer;
  image.save(&buffer, "PNG");
  return buffer.data();
}

}  // namespace

QByteArray chartAs(ChartFormat format, const Chart& chart, QSize size) {
  switch (format) {
    case ChartFormat::csv:
      return QByteArray::fromStdString(chartAsCsv(chart));
    case ChartFormat::svg:
      return svgOf(chart, size);
    case ChartFormat::png:
      return pngOf(chart, size);
  }
  return {};
}

std::optional<QString> writeFile(const QString& path, const QByteArray& content) {
  const QFileInfo target(path);
  if (target.exists() && !target.isFile()) {  // replacing a device or a folder would harm the system
    return ChartWords::tr("%1 could not be written: it is not a file.").arg(path);
  }
  QSaveFile file(path);
  if (file.open(QIODevice::WriteOnly) && file.write(content) == content.size() && file.commit()) {
    return std::nullopt;
  }
  return ChartWords::tr("%1 could not be written: %2.").arg(path, file.errorString());
}

QString fileNameOf(const Chart& chart, ChartFormat format) {
  const char* const endings[] = {".csv", ".svg", ".png"};
  QString name = QString::fromStdString(chart.title).toLower();
  name.replace(QRegularExpression(QStringLiteral("[^\\p{L}\\p{N}]+")), QStringLiteral("-"));
  name.remove(QRegularExpression(QStringLiteral("^-|-$")));
  return (name.isEmpty() ? QStringLiteral("chart") : name) +
         QLatin1String(endings[static_cast<std::size_t>(format)]);
}

}  // namespace fettle::ui
