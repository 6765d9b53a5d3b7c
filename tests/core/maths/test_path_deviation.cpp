#include "core/maths/path_deviation.h"

#include <QTest>
#include <cmath>

#include "tests/support/near.h"
#include "tests/support/shaper_at.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using namespace fettle::tests;

namespace {

/// Position of the shaped motion: the mean of the unshaped position at t − t_i.
template <typename Path>
double shaped(const Shaper& shaper, const Path& path, double time) {
  double position = 0.0;
  for (const Impulse& impulse : shaper.impulses) {
    position += impulse.amplitude * path(time - impulse.time);
  }
  return position;
}

}  // namespace

class TestPathDeviation : public QObject {
  Q_OBJECT

 private slots:
  /// By hand, undamped with T = 1/f: zv ½, ½ at 0, T/2: σ = T/4, Σ A|t − t̄| = T/4; zvd ¼, ½, ¼ at 0, T/2,
  /// T: σ² = T²/8, T/4.
  void byHand() {
    const Shaper zv = shaperAt(ShaperKind::zv, 50.0, 0.0);
    VERIFY_NEAR(shaperDuration(zv), 0.01, 1e-15);
    VERIFY_NEAR(shaperMeanTime(zv), 0.005, 1e-15);
    VERIFY_NEAR(shaperVariance(zv), 0.005 * 0.005, 1e-15);
    VERIFY_NEAR(shaperMeanAbsoluteDeviation(zv), 0.005, 1e-15);
    const Shaper zvd = shaperAt(ShaperKind::zvd, 50.0, 0.0);
    VERIFY_NEAR(shaperVariance(zvd), 0.02 * 0.02 / 8.0, 1e-15);
    VERIFY_NEAR(shaperMeanAbsoluteDeviation(zvd), 0.005, 1e-15);
    // e = 0.1 mm: a = 2·0.1/25e-6 = 8000 mm/s².
    VERIFY_NEAR(accelerationLimit(zv, 0.1), 8000.0, 1e-6);
    VERIFY_NEAR(pathDeviation(zv, 8000.0), 0.1, 1e-12);
  }

  /// Against the motion itself: constant acceleration, shaped and compared with the path one mean time ago.
  void constantAcceleration() {
    for (const ShaperKind kind : shaperKinds) {
      const Shaper shaper = shaperAt(kind, 44.6, 0.055);
      const auto path = [](double t) { return 0.5 * 5000.0 * t * t; };
      const double lagging = path(1.0 - shaperMeanTime(shaper));
      const double deviation = shaped(shaper, path, 1.0) - lagging;
      VERIFY_NEAR(deviation, pathDeviation(shaper, 5000.0), 1e-9);
    }
  }

  /// Against the motion at a corner: x comes in braking at a, is at v when it reaches the corner and stands
  /// from then on. One mean time after, the shaped x is short of the corner by the corner deviation. Exact
  /// for a shaper that is symmetric in time, as all are without damping.
  void cornerTakenAtSpeed() {
    for (const ShaperKind kind : shaperKinds) {
      const Shaper shaper = shaperAt(kind, 44.6, 0.0);
      const auto path = [](double t) { return t < 0.0 ? 20.0 * t - 0.5 * 3000.0 * t * t : 0.0; };
      const double deviation = -shaped(shaper, path, shaperMeanTime(shaper));
      VERIFY_NEAR(deviation, cornerDeviation(shaper, 3000.0, 20.0), 1e-9);
    }
  }

  /// Half of the deviation is left for the corner when the acceleration is at its limit: v = e/Σ A|t − t̄|.
  void cornerSpeed() {
    const Shaper zv = shaperAt(ShaperKind::zv, 50.0, 0.0);
    const double limit = accelerationLimit(zv, 0.1);
    VERIFY_NEAR(cornerSpeedLimit(zv, limit, 0.1), 0.1 / 0.005, 1e-9);
    const double speed = cornerSpeedLimit(zv, 3000.0, 0.1);
    VERIFY_NEAR(cornerDeviation(zv, 3000.0, speed), 0.1, 1e-12);
    QCOMPARE(cornerSpeedLimit(zv, 3.0 * limit, 0.1), 0.0);
  }
};

FETTLE_TEST(TestPathDeviation)
#include "test_path_deviation.moc"
