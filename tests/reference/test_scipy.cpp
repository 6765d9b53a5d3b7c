#include <QTest>
#include <cmath>
#include <random>

#include "core/maths/bicubic_spline.h"
#include "core/maths/distributions.h"
#include "core/maths/minimum_zone.h"
#include "tests/reference/scipy.h"
#include "tests/support/digits.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using namespace fettle::tests;

namespace {

struct Cloud {
  std::vector<double> x;
  std::vector<double> y;
  std::vector<double> z;
};

/// A grid of side by side points over 300 mm with tilt, bow and noise; `resolution` 0 keeps all digits.
Cloud makeGrid(int side, double resolution, std::mt19937& random) {
  std::normal_distribution<double> noise(0, 0.03);
  Cloud cloud;
  for (int row = 0; row < side; ++row) {
    for (int column = 0; column < side; ++column) {
      const double x = 300.0 * column / (side - 1);
      const double y = 300.0 * row / (side - 1);
      const double z = 0.2 + 0.001 * x - 0.0007 * y + 4e-6 * (x - 150) * (y - 140) + noise(random);
      cloud.x.push_back(x);
      cloud.y.push_back(y);
      cloud.z.push_back(resolution > 0 ? std::round(z / resolution) * resolution : z);
    }
  }
  return cloud;
}

std::vector<double> risingPoints(int count, std::mt19937& random) {
  std::uniform_real_distribution<double> gap(0.2, 3);
  std::vector<double> x{gap(random) - 5};
  while (static_cast<int>(x.size()) < count) {
    x.push_back(x.back() + gap(random));
  }
  return x;
}

}  // namespace

/// SciPy, run on the same random inputs (fixed seeds).
class TestScipy : public QObject {
  Q_OBJECT

 private slots:
  /// linprog (HiGHS, feasible to about 1e-9 mm) on the linear program of the Chebyshev plane. Grids are
  /// scattered, rounded to a probe's resolution (many ties) and as large as 21 by 21.
  void minimumZone() {
    std::mt19937 random(20240611);
    std::vector<Cloud> clouds;
    QJsonArray data;
    for (const int side : {2, 3, 4, 5, 7, 9, 15, 21}) {
      for (const double resolution : {0.0, 0.01, 0.05}) {
        clouds.push_back(makeGrid(side, resolution, random));
        const Cloud& cloud = clouds.back();
        data.append(QJsonObject{{"x", toJson(cloud.x)}, {"y", toJson(cloud.y)}, {"z", toJson(cloud.z)}});
      }
    }
    const auto answer = runScipy(QStringLiteral(R"(
from scipy.optimize import linprog
widths = []
for cloud in data['clouds']:
    x, y, z = (np.array(cloud[k]) for k in 'xyz')
    one = np.ones_like(x)
    a = np.vstack([np.column_stack([one, x, y, -one]), np.column_stack([-one, -x, -y, -one])])
    fit = linprog([0, 0, 0, 1], A_ub=a, b_ub=np.concatenate([z, -z]), bounds=[(None, None)] * 3 + [(0, None)],
                  method='highs')
    widths.append(2 * fit.fun)
result = {'widths': widths}
)"),
                                 {{"clouds", data}});
    SKIP_WITHOUT_SCIPY(answer);
    const auto widths = answer->value("widths").toArray();
    QCOMPARE(widths.size(), static_cast<qsizetype>(clouds.size()));
    for (std::size_t i = 0; i < clouds.size(); ++i) {
      const auto zone = fitMinimumZone(clouds[i].x, clouds[i].y, clouds[i].z);
      QVERIFY2(zone.has_value(), zone ? "" : zone.error().c_str());
      const double expected = widths[static_cast<qsizetype>(i)].toDouble();
      QVERIFY2(std::abs(zone->width - expected) < 2e-9, qPrintable(QStringLiteral("%1 points: %2, SciPy %3")
                                                                       .arg(clouds[i].x.size())
                                                                       .arg(zone->width, 0, 'g', 15)
                                                                       .arg(expected, 0, 'g', 15)));
    }
  }

  /// CubicSpline with the not-a-knot ends, inside and a little outside the points.
  void cubicSpline() {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> height(-2, 2);
    std::vector<std::vector<double>> xs;
    std::vector<std::vector<double>> ys;
    QJsonArray data;
    for (const int count : {2, 3, 4, 5, 8, 30}) {
      xs.push_back(risingPoints(count, random));
      ys.emplace_back();
      for (int i = 0; i < count; ++i) {
        ys.back().push_back(height(random));
      }
      data.append(QJsonObject{{"x", toJson(xs.back())}, {"y", toJson(ys.back())}});
    }
    const auto answer = runScipy(QStringLiteral(R"(
from scipy.interpolate import CubicSpline
values = []
for case in data['cases']:
    x = np.array(case['x'])
    values.append(CubicSpline(x, case['y'])(np.linspace(x[0] - 0.5, x[-1] + 0.5, 101)).tolist())
result = {'values': values}
)"),
                                 {{"cases", data}});
    SKIP_WITHOUT_SCIPY(answer);
    const auto values = answer->value("values").toArray();
    QCOMPARE(values.size(), static_cast<qsizetype>(xs.size()));
    for (std::size_t i = 0; i < xs.size(); ++i) {
      const auto spline = CubicSpline::through(xs[i], ys[i]);
      QVERIFY(spline.has_value());
      const auto expected = values[static_cast<qsizetype>(i)].toArray();
      for (int k = 0; k <= 100; ++k) {
        const double at = xs[i].front() - 0.5 + (xs[i].back() - xs[i].front() + 1) * k / 100;
        QVERIFY(std::abs((*spline)(at)-expected[k].toDouble()) < 1e-11);
      }
    }
  }

  /// RectBivariateSpline with s = 0 is the not-a-knot tensor spline.
  void bicubicSpline() {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> height(-1, 1);
    const auto x = risingPoints(9, random);
    const auto y = risingPoints(6, random);
    Eigen::MatrixXd z(6, 9);
    QJsonArray rows;
    for (Eigen::Index row = 0; row < 6; ++row) {
      QJsonArray cells;
      for (Eigen::Index column = 0; column < 9; ++column) {
        z(row, column) = height(random);
        cells.append(z(row, column));
      }
      rows.append(cells);
    }
    const auto answer = runScipy(QStringLiteral(R"(
from scipy.interpolate import RectBivariateSpline
x, y = np.array(data['x']), np.array(data['y'])
spline = RectBivariateSpline(y, x, np.array(data['z']), s=0)
result = {'z': [spline(y[0] + (y[-1] - y[0]) * j / 20, x[0] + (x[-1] - x[0]) * i / 20)[0, 0]
                for j in range(21) for i in range(21)]}
)"),
                                 {{"x", toJson(x)}, {"y", toJson(y)}, {"z", rows}});
    SKIP_WITHOUT_SCIPY(answer);
    const auto expected = answer->value("z").toArray();
    QCOMPARE(expected.size(), 441);
    const auto spline = BicubicSpline::through(x, y, z);
    QVERIFY(spline.has_value());
    for (int j = 0; j < 21; ++j) {
      for (int i = 0; i < 21; ++i) {
        const double got = (*spline)(x[0] + (x.back() - x[0]) * i / 20, y[0] + (y.back() - y[0]) * j / 20);
        VERIFY_NEAR(got, expected[j * 21 + i].toDouble(), 1e-11);
      }
    }
  }

  /// Probabilities with real degrees of freedom, and F quantiles.
  void distributions() {
    const auto answer = runScipy(QStringLiteral(R"(
from scipy import stats
result = {'t': [stats.t.sf(x, v) for v in (0.7, 1, 3.4, 12.9, 250.5) for x in (-2, 0.3, 1.7, 6)],
          'f': [stats.f.sf(x, a, b) for a in (1, 3, 7.5) for b in (1, 4, 24, 300) for x in (0.2, 1, 4.26, 30)],
          'fq': [stats.f.ppf(0.95, 1, b) for b in (1, 4, 7, 24, 300)],
          'c': [stats.chi2.sf(x, v) for v in (0.5, 1, 6.3, 40) for x in (0.1, 2, 11, 60)],
          'n': [stats.norm.sf(x) for x in (-8, -1, 0, 1.96, 8)]}
)"),
                                 {});
    SKIP_WITHOUT_SCIPY(answer);
    std::vector<double> got;
    const auto compare = [&](const char* key) {
      const auto expected = answer->value(QLatin1String(key)).toArray();
      QCOMPARE(expected.size(), static_cast<qsizetype>(got.size()));
      for (std::size_t i = 0; i < got.size(); ++i) {
        VERIFY_DIGITS(key, got[i], expected[static_cast<qsizetype>(i)].toDouble(), 11);
      }
      got.clear();
    };
    for (const double v : {0.7, 1.0, 3.4, 12.9, 250.5}) {
      for (const double x : {-2.0, 0.3, 1.7, 6.0}) {
        got.push_back(studentUpper(x, v));
      }
    }
    compare("t");
    for (const double a : {1.0, 3.0, 7.5}) {
      for (const double b : {1.0, 4.0, 24.0, 300.0}) {
        for (const double x : {0.2, 1.0, 4.26, 30.0}) {
          got.push_back(fUpper(x, a, b));
        }
      }
    }
    compare("f");
    for (const double b : {1.0, 4.0, 7.0, 24.0, 300.0}) {
      got.push_back(fQuantile(0.95, 1, b));
    }
    compare("fq");
    for (const double v : {0.5, 1.0, 6.3, 40.0}) {
      for (const double x : {0.1, 2.0, 11.0, 60.0}) {
        got.push_back(chiSquareUpper(x, v));
      }
    }
    compare("c");
    for (const double x : {-8.0, -1.0, 0.0, 1.96, 8.0}) {
      got.push_back(normalUpper(x));
    }
    compare("n");
  }
};

FETTLE_TEST(TestScipy)
#include "test_scipy.moc"
