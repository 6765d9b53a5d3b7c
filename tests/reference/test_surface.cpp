#include <QFile>
#include <QTest>

#include "core/maths/bicubic_spline.h"
#include "core/maths/minimum_zone.h"
#include "core/maths/quadratic_surface.h"
#include "tests/support/digits.h"
#include "tests/support/test_files.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using namespace fettle::tests;

namespace {

/// Heights of Maunga Whau in m on a 10 m grid (object volcano of R's datasets, digitised by R. Ihaka).
/// x is the row, y the column, both from 0, every `step`-th of them.
struct Terrain {
  std::vector<double> rows;
  std::vector<double> columns;
  Eigen::MatrixXd heights;
  std::vector<double> x;
  std::vector<double> y;
  std::vector<double> z;
};

Terrain readTerrain(int step) {
  Terrain terrain;
  QFile file(outsideFile("reference/volcano.csv"));
  if (!file.open(QIODevice::ReadOnly)) {
    return terrain;
  }
  const auto lines = file.readAll().trimmed().split('\n');
  const auto width = lines.front().split(',').size();
  terrain.heights.resize((lines.size() + step - 1) / step, (width + step - 1) / step);
  for (qsizetype row = 0; row < lines.size(); row += step) {
    const auto cells = lines[row].split(',');
    terrain.rows.push_back(static_cast<double>(row));
    for (qsizetype column = 0; column < width; column += step) {
      terrain.x.push_back(static_cast<double>(row));
      terrain.y.push_back(static_cast<double>(column));
      terrain.z.push_back(cells[column].toDouble());
      terrain.heights(row / step, column / step) = terrain.z.back();
    }
  }
  for (qsizetype column = 0; column < width; column += step) {
    terrain.columns.push_back(static_cast<double>(column));
  }
  return terrain;
}

#define SKIP_WITHOUT_TERRAIN(terrain)                                                                  \
  if ((terrain).z.empty()) {                                                                           \
    QSKIP(                                                                                             \
        "Needs reference/volcano.csv, no part of the project, in the folder that FETTLE_OUTSIDE_DATA " \
        "names.");                                                                                     \
  }

}  // namespace

/// Planes, minimum zones and splines over measured terrain. Expected values: SciPy 1.10 (least squares,
/// linprog with HiGHS, RectBivariateSpline), unless named otherwise.
class TestSurface : public QObject {
  Q_OBJECT

 private slots:
  void planeOfTerrain() {
    const Terrain terrain = readTerrain(1);
    SKIP_WITHOUT_TERRAIN(terrain);
    const auto fit = fitPlane(terrain.x, terrain.y, terrain.z);
    QVERIFY(fit.has_value());
    VERIFY_DIGITS("a", fit->plane.a, 151.8435012518752, 12);
    VERIFY_DIGITS("b", fit->plane.b, -0.40111558351072324, 12);
    VERIFY_DIGITS("c", fit->plane.c, -0.14692220256873056, 12);
    VERIFY_DIGITS("rms", fit->rootMeanSquare, 23.643638907161943, 12);
    VERIFY_DIGITS("residual sd", fit->residualStandardDeviation, 23.650324511397688, 12);
    VERIFY_DIGITS("peak to valley", fit->peakToValley, 107.02886216376567, 12);
  }

  void quadraticOfTerrain() {
    const Terrain terrain = readTerrain(1);
    SKIP_WITHOUT_TERRAIN(terrain);
    const auto surface = fitQuadraticSurface(terrain.x, terrain.y, terrain.z);
    QVERIFY(surface.has_value());
    VERIFY_DIGITS("rms", surface->rootMeanSquare, 13.573167198970726, 12);
    // Coefficients in rows and columns, turned into those in u and v by the half ranges 43 and 30.
    VERIFY_DIGITS("bow x", surface->bowX, -0.022627170678594544 * 43 * 43, 11);
    VERIFY_DIGITS("bow y", surface->bowY, -0.051404609878552554 * 30 * 30, 11);
    VERIFY_DIGITS("twist", surface->twist, -0.006768982445518823 * 43 * 30, 11);
    VERIFY_DIGITS("corner", surface->at(0, 0), 85.21535779205249, 11);
  }

  /// The optimum is certified: the high point's foot lies inside the triangle of the low ones.
  void minimumZoneOfTerrain() {
    const Terrain terrain = readTerrain(1);
    SKIP_WITHOUT_TERRAIN(terrain);
    const auto zone = fitMinimumZone(terrain.x, terrain.y, terrain.z);
    QVERIFY(zone.has_value());
    VERIFY_DIGITS("width", zone->width, 14669.0 / 153, 13);
    VERIFY_DIGITS("a", zone->plane.a, 147.40849673202626, 12);
    VERIFY_DIGITS("b", zone->plane.b, -1.0 / 9, 12);
    VERIFY_DIGITS("c", zone->plane.c, 1.0 / 17, 12);
    QCOMPARE(zone->high, std::vector<std::size_t>{19 * 61 + 30});
    QCOMPARE(zone->low, (std::vector<std::size_t>{9, 60, 81 * 61 + 60}));
  }

  void minimumZoneOfEveryTenth() {
    const Terrain terrain = readTerrain(10);
    SKIP_WITHOUT_TERRAIN(terrain);
    const auto fit = fitPlane(terrain.x, terrain.y, terrain.z);
    const auto zone = fitMinimumZone(terrain.x, terrain.y, terrain.z);
    QVERIFY(fit && zone);
    VERIFY_DIGITS("least-squares width", fit->peakToValley, 97.68730158730165, 12);
    VERIFY_DIGITS("width", zone->width, 90.5, 13);
    VERIFY_DIGITS("a", zone->plane.a, 145.25, 13);
    VERIFY_DIGITS("b", zone->plane.b, -0.1, 13);
    VERIFY_DIGITS("c", zone->plane.c, 0.05, 13);
  }

  void splineOfTerrain() {
    const Terrain full = readTerrain(1);
    SKIP_WITHOUT_TERRAIN(full);
    const Terrain coarse = readTerrain(10);
    const auto fine = BicubicSpline::through(full.columns, full.rows, full.heights);
    const auto tenth = BicubicSpline::through(coarse.columns, coarse.rows, coarse.heights);
    QVERIFY(fine && tenth);
    VERIFY_DIGITS("0.5, 0.5", (*fine)(0.5, 0.5), 100.19928191049142, 12);
    VERIFY_DIGITS("10.25, 20.75", (*fine)(20.75, 10.25), 144.25725543781022, 12);
    VERIFY_DIGITS("43.3, 30.6", (*fine)(30.6, 43.3), 159.58250615394948, 12);
    VERIFY_DIGITS("85.5, 59.5", (*fine)(59.5, 85.5), 94.00543349019763, 12);
    VERIFY_DIGITS("19, 30", (*fine)(30, 19), 195.0, 14);
    VERIFY_DIGITS("coarse 5.5, 5.5", (*tenth)(5.5, 5.5), 99.81978390578371, 12);
    VERIFY_DIGITS("coarse 33.3, 21.7", (*tenth)(21.7, 33.3), 165.45914155022058, 12);
    VERIFY_DIGITS("coarse 78.5, 8.25", (*tenth)(8.25, 78.5), 107.04476089497398, 12);
    const auto heights = tenth->atGrid(full.columns, std::span(full.rows).first(81));
    const double rms = std::sqrt((heights - full.heights.topRows(81)).squaredNorm() / (81 * 61));
    VERIFY_DIGITS("reconstruction", rms, 4.734641339626487, 11);
  }

  /// Five points of a discussion in an engineering forum (eng-tips thread 393584), without an answer there.
  void fivePoints() {
    const double x[]{11.5, 18.5, 4.5, 25.5, 11.5};
    const double y[]{7, 6.9, 13, 30, 37.5};
    const double z[]{1.1, 1.03, 1.02, 1.03, 1.02};
    const auto fit = fitPlane(x, y, z);
    const auto zone = fitMinimumZone(x, y, z);
    QVERIFY(fit && zone);
    VERIFY_DIGITS("a", fit->plane.a, 1.05966367, 8);
    VERIFY_DIGITS("b", fit->plane.b, 2.81689544e-4, 8);
    VERIFY_DIGITS("c", fit->plane.c, -1.25486366e-3, 8);
    VERIFY_DIGITS("peak to valley", fit->peakToValley, 0.0720973132, 8);
    VERIFY_DIGITS("width", zone->width, 0.0672622951, 8);
    VERIFY_DIGITS("zone a", zone->plane.a, 1.08965808, 8);
    VERIFY_DIGITS("zone b", zone->plane.b, -4.28571429e-4, 8);
    VERIFY_DIGITS("zone c", zone->plane.c, -2.62295082e-3, 8);
  }
};

FETTLE_TEST(TestSurface)
#include "test_surface.moc"
