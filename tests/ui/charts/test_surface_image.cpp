#include "ui/charts/surface_image.h"

#include <QtTest>

#include "tests/support/test_main.h"
#include "tests/ui/charts/sample_charts.h"

using namespace fettle;
using namespace fettle::ui;

namespace {

SurfaceImage imageOf(const Chart& chart, const View& view, QSizeF size) {
  return surfaceImage(chart, SurfaceColours(*chart.surface), AxisScale(view.x, {0, size.width()}, false),
                      AxisScale(view.y, {size.height(), 0}, false), 1);
}

}  // namespace

class TestSurfaceImage : public QObject {
  Q_OBJECT

 private slots:
  void coloursRunFromLowestToHighest();
  void differencesAreEvenAboutZero();
  void flatSurfaceHasARange();
  void planeIsSmooth();
  void fallingNodesAreTheSame();
  void blankCellsAreTransparent();
  void onlyWhatIsInView();
  void strongCellsAreKept();
  void fewCellsFillTheirPixels();
};

void TestSurfaceImage::coloursRunFromLowestToHighest() {
  const SurfaceColours colours(*tests::planeMap().surface);
  QCOMPARE(colours.range(), (Range{0, 0.13}));
  QCOMPARE(colours.colour(0), heightColours().front());
  QCOMPARE(colours.colour(0.13), heightColours().back());
  QVERIFY(std::isnan(colours.part(std::nan(""))));
}

void TestSurfaceImage::differencesAreEvenAboutZero() {
  Surface surface;
  surface.difference = true;
  surface.z = {{-0.01, 0.04}};
  const SurfaceColours colours(surface);
  QCOMPARE(colours.range(), (Range{-0.04, 0.04}));
  QVERIFY(lightness(colours.colour(0)) > 98);
}

void TestSurfaceImage::flatSurfaceHasARange() {
  Surface surface;
  surface.z = {{2, 2}};
  QVERIFY(std::isfinite(SurfaceColours(surface).part(2)));
  surface.z = {{std::nan("")}};
  QVERIFY(SurfaceColours(surface).range().size() > 0);
}

// A plane interpolated straight is the plane: every pixel has the colour of its own height, within one step
// of the map for rounding.
void TestSurfaceImage::planeIsSmooth() {
  const Chart chart = tests::planeMap();
  const SurfaceColours colours(*chart.surface);
  const SurfaceImage drawn = imageOf(chart, {{0, 100}, {0, 80}}, {200, 160});
  QCOMPARE(drawn.area, QRectF(0, 0, 200, 160));
  for (const QPoint pixel : {QPoint(0, 159), QPoint(100, 80), QPoint(37, 120), QPoint(199, 159)}) {
    const double x = (pixel.x() + 0.5) / 2, y = (160 - pixel.y() - 0.5) / 2;
    const QColor expected(colours.colour(0.001 * x + 0.0005 * y)), found(drawn.image.pixel(pixel));
    QVERIFY(std::abs(expected.red() - found.red()) <= 4 && std::abs(expected.blue() - found.blue()) <= 4);
  }
}

void TestSurfaceImage::fallingNodesAreTheSame() {
  Chart chart = tests::planeMap();
  const SurfaceImage rising = imageOf(chart, {{0, 100}, {0, 80}}, {200, 160});
  std::reverse(chart.surface->y.begin(), chart.surface->y.end());
  std::reverse(chart.surface->z.begin(), chart.surface->z.end());
  const SurfaceImage falling = imageOf(chart, {{0, 100}, {0, 80}}, {200, 160});
  QCOMPARE(falling.area, rising.area);
  QCOMPARE(QColor(falling.image.pixel(50, 50)), QColor(rising.image.pixel(50, 50)));
  QCOMPARE(qAlpha(falling.image.pixel(195, 5)), 0);
}

void TestSurfaceImage::blankCellsAreTransparent() {
  const SurfaceImage drawn = imageOf(tests::planeMap(), {{0, 100}, {0, 80}}, {200, 160});
  QCOMPARE(qAlpha(drawn.image.pixel(195, 5)), 0);
  QCOMPARE(qAlpha(drawn.image.pixel(195, 155)), 255);
  QCOMPARE(qAlpha(drawn.image.pixel(140, 5)), 255);
}

void TestSurfaceImage::onlyWhatIsInView() {
  const Chart chart = tests::planeMap();
  QCOMPARE(imageOf(chart, {{-100, 100}, {0, 80}}, {200, 160}).area, QRectF(100, 0, 100, 160));
  QVERIFY(imageOf(chart, {{200, 300}, {0, 80}}, {200, 160}).area.isEmpty());
}

// 1000 by 400 cells on 100 by 100 pixels: the one strong cell is still there.
void TestSurfaceImage::strongCellsAreKept() {
  for (const std::size_t at : {0U, 123U, 777U}) {
    const Chart chart = tests::loneCell(1000, 400, at, at % 400);
    const View view = wholeView(chart);
    const QImage image = imageOf(chart, view, {100, 100}).image;
    int strong = 0;
    for (int y = 0; y < image.height(); ++y) {
      for (int x = 0; x < image.width(); ++x) {
        strong += image.pixel(x, y) == heightColours().back() ? 1 : 0;
      }
    }
    QVERIFY2(strong >= 1 && strong <= 4, qPrintable(QString::number(strong)));
  }
}

// 4 by 2 cells of 25 by 50 pixels.
void TestSurfaceImage::fewCellsFillTheirPixels() {
  const Chart chart = tests::loneCell(4, 2, 1, 1);
  const QImage image = imageOf(chart, wholeView(chart), {100, 100}).image;
  int strong = 0;
  for (int y = 0; y < 100; ++y) {
    for (int x = 0; x < 100; ++x) {
      strong += image.pixel(x, y) == heightColours().back() ? 1 : 0;
    }
  }
  QVERIFY2(std::abs(strong - 25 * 50) <= 76,
           qPrintable(QString::number(strong)));  // one row and column of pixels
  QCOMPARE(image.pixel(37, 25), heightColours().back());
}

FETTLE_TEST(TestSurfaceImage)
#include "test_surface_image.moc"
