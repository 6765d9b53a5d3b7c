#include "ui/charts/chart_scene.h"

#include <QtTest>
#include <numeric>

#include "tests/support/test_main.h"
#include "tests/ui/charts/sample_charts.h"
#include "ui/charts/draw_chart.h"
#include "ui/theme/look.h"

using namespace fettle;
using namespace fettle::ui;

namespace {

ChartDrawing drawing(const Chart& chart, const std::optional<View>& view = std::nullopt) {
  DrawingSettings settings;
  settings.size = {560, 480};
  settings.font = settings.sentenceFont = fontsOf().small;
  return drawingOf(chart, view.value_or(wholeView(chart)), Palette::light(), settings);
}

QImage rendered(ChartScene& scene) {
  QImage image(560, 480, QImage::Format_RGB32);
  image.fill(Qt::red);
  QPainter painter(&image);
  scene.render(painter, image.rect());
  return image;
}

/// True when a pixel within two of the place has the colour.
bool hasColour(const QImage& image, QPointF place, const QColor& colour) {
  for (int dy = -2; dy <= 2; ++dy) {
    for (int dx = -2; dx <= 2; ++dx) {
      const QColor here(image.pixel(place.toPoint() + QPoint(dx, dy)));
      if (std::abs(here.red() - colour.red()) + std::abs(here.green() - colour.green()) +
              std::abs(here.blue() - colour.blue()) <
          60) {
        return true;
      }
    }
  }
  return false;
}

}  // namespace

class TestChartScene : public QObject {
  Q_OBJECT

 private slots:
  void linesAndMarksAreWhereTheLayoutSays();
  void sameSceneTakesEveryKind();
  void logarithmicAxis();
  void peakOfOneSampleIsSeen();
  void contoursLieOnTheirHeight();
  void labelsDoNotOverlap();
  void emptyChartSaysWhatToEnter();
  void sameOnAFinerDevice();
  void measuredLinesAreSeenOverTheirModel();
  void heightsDoNotStandOnOtherContours();
  void crowdedPointsAreNamedApart();
};

void TestChartScene::linesAndMarksAreWhereTheLayoutSays() {
  ChartScene scene;
  scene.setDrawing(drawing(tests::hingeChart()));
  const QImage image = rendered(scene);
  const ChartLayout& layout = scene.drawing().layout;
  const QColor blue = Palette::light().series(0);
  QVERIFY(hasColour(image, layout.place(6, 0.991), blue));
  QVERIFY(hasColour(image, layout.place(18, 0.991 - 0.296 * 7.4 / 11.4), blue));
  QVERIFY(!hasColour(image, layout.place(18, 0.95), blue));
  QVERIFY(hasColour(image, layout.place(12.5, 0.75), Palette::light().fault));
  QVERIFY(hasColour(image, layout.place(12, 0.955) + QPointF(3.5, 0), blue));
  QCOMPARE(QColor(image.pixel(layout.place(16, 0.85).toPoint())).alpha(), 255);
}

// One scene through every kind and back gives the picture a new scene gives: nothing is left over.
void TestChartScene::sameSceneTakesEveryKind() {
  Chart band = tests::hingeChart();
  band.series.push_back(tests::series("interval", SeriesRole::band, {2, 22}, {0.9, 0.7}, 1));
  band.series.back().yHigh = {0.95, 0.8};
  Chart logarithmic = tests::hingeChart();
  logarithmic.y.logarithmic = true;
  ChartScene scene;
  for (const auto& chart : {band, tests::bedPlan(), logarithmic, tests::planeMap(),
                            tests::loneCell(20, 10, 3, 3), tests::emptyChart(), tests::hingeChart()}) {
    scene.setDrawing(drawing(chart));
    ChartScene fresh;
    fresh.setDrawing(drawing(chart));
    QVERIFY2(rendered(scene) == rendered(fresh), chart.title.c_str());
  }
}

void TestChartScene::logarithmicAxis() {
  Chart chart;
  chart.x = {"frequency", "Hz"};
  chart.y = {"density", "1", true};
  chart.series = {tests::series("density", SeriesRole::model, {1, 2, 3, 4}, {0, 1, 100, 10000})};
  ChartScene scene;
  scene.setDrawing(drawing(chart));
  const QImage image = rendered(scene);
  QVERIFY(hasColour(image, scene.drawing().layout.place(2.5, 10), Palette::light().series(0)));
  QCOMPARE(scene.drawing().series[0].values.size(), 3);  // zero has no place on it
}

void TestChartScene::peakOfOneSampleIsSeen() {
  ChartScene scene;
  scene.setDrawing(drawing(tests::longTrace(400000)));
  const auto& trace = scene.drawing().series[0];
  QVERIFY(trace.values.size() <= 2 * 560);
  Chart faulty = tests::longTrace(4000);
  faulty.series[0].y[2000] = std::nan("");
  const ChartDrawing withoutIt = drawing(faulty);
  for (const auto& value : withoutIt.series[0].values) {
    QVERIFY(std::isfinite(value.y()));
  }
  const QImage image = rendered(scene);
  const QPointF peak = scene.drawing().layout.place(266666 / 3200.0, 9000);
  QVERIFY(hasColour(image, peak + QPointF(0, 3), Palette::light().series(0)));
}

void TestChartScene::contoursLieOnTheirHeight() {
  const ChartDrawing map = drawing(tests::planeMap());
  QVERIFY(map.contours.size() >= 5 && map.levels.size() >= 3);
  for (const auto& contour : map.contours) {
    for (const auto& place : contour.places) {
      const double height = 0.001 * map.layout.x.value(place.x()) + 0.0005 * map.layout.y.value(place.y());
      QVERIFY(std::abs(height - contour.level) < 1e-9);
    }
  }
  for (std::size_t i = 0; i < map.levels.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      QVERIFY(!map.levels[i].place.intersects(map.levels[j].place));
    }
  }
}

void TestChartScene::labelsDoNotOverlap() {
  for (const auto& chart : {tests::hingeChart(), tests::bedPlan()}) {
    const ChartDrawing drawn = drawing(chart);
    QCOMPARE(drawn.labels.size(), chart.series.size() + chart.lines.size() + chart.bands.size());
    for (std::size_t i = 0; i < drawn.labels.size(); ++i) {
      QVERIFY(drawn.layout.plot.contains(drawn.labels[i].place));
      for (std::size_t j = 0; j < i; ++j) {
        QVERIFY(!drawn.labels[i].place.intersects(drawn.labels[j].place));
      }
    }
  }
}

// Words in the middle third, in the dim colour; nothing of a grid.
void TestChartScene::emptyChartSaysWhatToEnter() {
  ChartScene scene;
  scene.setDrawing(drawing(tests::emptyChart()));
  const QImage image = rendered(scene);
  int words = 0, elsewhere = 0;
  for (int y = 0; y < 480; ++y) {
    for (int x = 0; x < 560; ++x) {
      if (QColor(image.pixel(x, y)).lightness() < 140) {
        (y > 160 && y < 320 ? words : elsewhere) += 1;
      }
    }
  }
  QVERIFY(words > 100);
  QCOMPARE(elsewhere, 0);
}

// Twice the dots an inch: the same picture, only finer. Type keeps its size in points.
void TestChartScene::sameOnAFinerDevice() {
  const auto painted = [](int dotsPerInch) {
    QImage image(560 * dotsPerInch / 96, 480 * dotsPerInch / 96, QImage::Format_RGB32);
    image.setDotsPerMeterX(qRound(dotsPerInch / 0.0254));
    image.setDotsPerMeterY(qRound(dotsPerInch / 0.0254));
    image.fill(Qt::white);
    QPainter painter(&image);
    paintChart(painter, image.rect(), tests::hingeChart(), Palette::print());
    painter.end();
    return image.scaled(140, 120, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
  };
  const QImage coarse = painted(96), fine = painted(384);
  double difference = 0;
  for (int y = 0; y < 120; ++y) {
    for (int x = 0; x < 140; ++x) {
      difference += std::abs(qGray(coarse.pixel(x, y)) - qGray(fine.pixel(x, y)));
    }
  }
  // Mean of 140 by 120 pixels in 256 greys; type of another size moves the whole plot and gives over 8.
  QVERIFY2(difference / (140 * 120) < 4, qPrintable(QString::number(difference / (140 * 120))));
}

// The same curve twice, in one hue: the trace is drawn last, over a broader, paler model.
void TestChartScene::measuredLinesAreSeenOverTheirModel() {
  Chart chart;
  std::vector<double> time(100);
  std::iota(time.begin(), time.end(), 0.0);
  chart.series = {tests::series("measured", SeriesRole::trace, time, std::vector<double>(100, 1.0), 1),
                  tests::series("fitted", SeriesRole::model, {0, 99}, {1, 1}, 1)};
  const ChartDrawing drawn = drawing(chart);
  QVERIFY(drawn.series[1].style.pen.widthF() > 2 * drawn.series[0].style.pen.widthF());
  ChartScene scene;
  scene.setDrawing(drawn);
  const QImage image = rendered(scene);
  const QPoint middle = drawn.layout.place(2, 1).toPoint();
  int darkest = 255;
  for (int dy = -2; dy <= 2; ++dy) {
    darkest = std::min(darkest, qGray(image.pixel(middle + QPoint(0, dy))));
  }
  const int edge = qGray(image.pixel(middle + QPoint(0, 2)));
  QVERIFY2(darkest < edge - 20, qPrintable(QStringLiteral("%1, %2").arg(darkest).arg(edge)));
}

// A steep edge: 0.01 mm a millimetre at the right end, contours a few pixels apart.
void TestChartScene::heightsDoNotStandOnOtherContours() {
  Chart chart = tests::planeMap();
  for (auto& row : chart.surface->z) {
    row = {0, 0, 0.001, 0.002, 0.25};
  }
  const ChartDrawing drawn = drawing(chart);
  QVERIFY(drawn.contours.size() > 2);
  for (const auto& level : drawn.levels) {
    for (const auto& contour : drawn.contours) {
      const bool isOwn = contour.level == level.level;
      for (const auto& place : contour.places) {
        QVERIFY(isOwn || !level.place.contains(place));
      }
    }
  }
}

// Six shapers, four of them nearly alike, beside a limit.
void TestChartScene::crowdedPointsAreNamedApart() {
  Chart chart;
  const double x[] = {0.135, 0.079, 0.0498, 0.0494, 0.0493, 0.0664};
  const double y[] = {5000, 4900, 3330, 4280, 4319, 4400};
  for (int i = 0; i < 6; ++i) {
    chart.series.push_back(tests::series("three-hump EI at 46.7 Hz, " + std::to_string(i),
                                         SeriesRole::measured, {x[i]}, {y[i]}, i));
  }
  chart.lines = {{"may be left", 0.05, true}};
  const ChartDrawing drawn = drawing(chart);
  QCOMPARE(drawn.labels.size(), std::size_t{7});
  for (std::size_t i = 0; i < drawn.labels.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      QVERIFY(!drawn.labels[i].place.intersects(drawn.labels[k].place));
    }
  }
}

FETTLE_TEST(TestChartScene)
#include "test_chart_scene.moc"
