#include "ui/charts/chart_export.h"

#include <QPainter>
#include <QSvgRenderer>
#include <QtTest>

#include "tests/support/test_main.h"
#include "tests/ui/charts/sample_charts.h"
#include "ui/theme/palette.h"

using namespace fettle;
using namespace fettle::ui;

namespace {

const QSize exportSize(560, 480);

int count(const QByteArray& text, const char* word) {
  return static_cast<int>(text.count(word));
}

}  // namespace

class TestChartExport : public QObject {
  Q_OBJECT

 private slots:
  void valuesAsText();
  void curvesAreVectors();
  void mapsHoldOnePicture();
  void pictureIsWhatSvgShows();
  void fileIsWritten();
  void problemIsASentence();
  void fileNames();
};

void TestChartExport::valuesAsText() {
  const Chart chart = tests::hingeChart();
  const QByteArray csv = chartAs(ChartFormat::csv, chart, exportSize);
  QCOMPARE(csv, QByteArray::fromStdString(chartAsCsv(chart)));
  QVERIFY(csv.contains("0.992"));
}

void TestChartExport::curvesAreVectors() {
  for (const auto& chart : {tests::hingeChart(), tests::bedPlan(), tests::longTrace(5000)}) {
    const QByteArray svg = chartAs(ChartFormat::svg, chart, exportSize);
    QCOMPARE(count(svg, "<image"), 0);
    QVERIFY(count(svg, "<polyline") + count(svg, "<path") > 5);
    QVERIFY(count(svg, "<text") > 8);
    QVERIFY(QSvgRenderer(svg).isValid());
  }
  const QByteArray svg = chartAs(ChartFormat::svg, tests::hingeChart(), exportSize);
  QVERIFY(svg.contains("flow, mm³/s") && svg.contains("limit 12.5") && svg.contains("print speed, mm/s"));
  QVERIFY(svg.contains("<title>Delivered against flow</title>"));
}

void TestChartExport::mapsHoldOnePicture() {
  const QByteArray svg = chartAs(ChartFormat::svg, tests::planeMap(), exportSize);
  QCOMPARE(count(svg, "<image"), 1);
  QVERIFY(count(svg, "<polyline") + count(svg, "<path") > 5);  // contours and grid
  QVERIFY(svg.contains("height, mm"));
}

// The picture has the line of the model, in its colour, where the drawing has it too.
void TestChartExport::pictureIsWhatSvgShows() {
  const Chart chart = tests::hingeChart();
  const QImage png = QImage::fromData(chartAs(ChartFormat::png, chart, exportSize));
  QCOMPARE(png.size(), exportSize * 2);
  QSvgRenderer renderer(chartAs(ChartFormat::svg, chart, exportSize));
  QImage svg(png.size(), QImage::Format_RGB32);
  svg.fill(Qt::white);
  QPainter painter(&svg);
  renderer.render(&painter);
  painter.end();
  const auto coloured = [](const QImage& image) {
    const QRgb wanted = Palette::print().series(0).rgb();
    QPoint sum;
    int found = 0;
    for (int y = 0; y < image.height(); ++y) {
      for (int x = 0; x < image.width(); ++x) {
        if (image.pixel(x, y) == wanted) {
          sum += QPoint(x, y);
          ++found;
        }
      }
    }
    return std::pair(found, found > 0 ? QPointF(sum) / found : QPointF());
  };
  const auto [inPng, middleOfPng] = coloured(png);
  const auto [inSvg, middleOfSvg] = coloured(svg);
  QVERIFY(inPng > 500 && inSvg > 500);
  QVERIFY(QLineF(middleOfPng, middleOfSvg).length() < 20);  // of 1120 pixels
}

void TestChartExport::fileIsWritten() {
  const QTemporaryDir folder;
  const QString path = folder.filePath("chart.csv");
  QVERIFY(!writeFile(path, "flow,delivered\n"));
  QFile file(path);
  QVERIFY(file.open(QIODevice::ReadOnly));
  QCOMPARE(file.readAll(), QByteArray("flow,delivered\n"));
}

void TestChartExport::problemIsASentence() {
  const QTemporaryDir folder;
  const QString path = folder.filePath("missing/chart.svg");
  const auto problem = writeFile(path, "<svg/>");
  QVERIFY(problem.has_value());
  QVERIFY(problem->startsWith(path + " could not be written: ") && problem->endsWith('.'));
  QVERIFY(!QFile::exists(path));
}

void TestChartExport::fileNames() {
  QCOMPARE(fileNameOf(tests::hingeChart(), ChartFormat::svg), QString("delivered-against-flow.svg"));
  QCOMPARE(fileNameOf(Chart{}, ChartFormat::csv), QString("chart.csv"));
}

FETTLE_TEST(TestChartExport)
#include "test_chart_export.moc"
