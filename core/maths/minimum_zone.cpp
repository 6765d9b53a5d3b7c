#include "core/maths/minimum_zone.h"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/maths/descriptive.h"

namespace fettle::maths {
namespace {

/// Points as rows (1, u, v) about their centroid in units of their extent, with the heights left over by
/// the least-squares plane: the numbers on which rounding does least.
struct Points {
  Eigen::Matrix<double, Eigen::Dynamic, 3> terms;
  Eigen::VectorXd heights;
  double centreX = 0;
  double centreY = 0;
  double scale = 1;
};

Points normalise(std::span<const double> x, std::span<const double> y, const PlaneFit& fit) {
  const auto count = static_cast<Eigen::Index>(x.size());
  Points points;
  points.centreX = mean(x);
  points.centreY = mean(y);
  points.terms.resize(count, 3);
  points.terms.col(0).setOnes();
  points.terms.col(1) = Eigen::Map<const Eigen::VectorXd>(x.data(), count).array() - points.centreX;
  points.terms.col(2) = Eigen::Map<const Eigen::VectorXd>(y.data(), count).array() - points.centreY;
  points.scale = points.terms.rightCols<2>().cwiseAbs().maxCoeff();
  points.terms.rightCols<2>() /= points.scale;
  points.heights = Eigen::Map<const Eigen::VectorXd>(fit.residuals.data(), count);
  return points;
}

/// Four points with signs, and the plane whose signed distances to them are equal.
class Reference {
 public:
  explicit Reference(const Points& points) : m_points(points) { choose(); }

  /// Signed distances of all points from the levelling plane.
  Eigen::VectorXd distances() const { return m_points.heights - m_points.terms * m_plane; }
  const Eigen::Vector3d& plane() const { return m_plane; }
  double distance() const { return m_distance; }

  /// Takes in a point on the given side and drops the one that keeps the distance growing. Ties are
  /// broken by the lowest index, which with rising entries cannot cycle (Bland 1977).
  void exchange(Eigen::Index entering, double sign) {
    const Eigen::PartialPivLU<Eigen::Matrix4d> factors(basis());
    const Eigen::Vector4d weights = factors.solve(Eigen::Vector4d::UnitW());
    const Eigen::Vector4d change = factors.solve(column(entering, sign));
    constexpr double tiny = 1e-11;
    std::size_t leaving = 0;
    double best = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < 4; ++i) {
      const auto at = static_cast<Eigen::Index>(i);
      if (change[at] <= tiny) {
        continue;
      }
      const double ratio = std::max(0.0, weights[at]) / change[at];
      if (ratio < best - tiny || (ratio < best + tiny && m_index[i] < m_index[leaving])) {
        leaving = i;
        best = std::min(best, ratio);
      }
    }
    m_index[leaving] = entering;
    m_sign[leaving] = sign;
    level();
  }

 private:
  Eigen::Vector4d column(Eigen::Index index, double sign) const {
    Eigen::Vector4d result;
    result << sign * m_points.terms.row(index).transpose(), 1;
    return result;
  }

  Eigen::Matrix4d basis() const {
    Eigen::Matrix4d result;
    for (std::size_t i = 0; i < 4; ++i) {
      result.col(static_cast<Eigen::Index>(i)) = column(m_index[i], m_sign[i]);
    }
    return result;
  }

  void level() {
    Eigen::Vector4d signedHeights;
    for (std::size_t i = 0; i < 4; ++i) {
      signedHeights[static_cast<Eigen::Index>(i)] = m_sign[i] * m_points.heights[m_index[i]];
    }
    const Eigen::Vector4d solution = basis().transpose().partialPivLu().solve(signedHeights);
    m_plane = solution.head<3>();
    m_distance = solution[3];
  }

  /// Three points far apart and the one farthest from the plane through them.
  void choose() {
    const auto uv = m_points.terms.rightCols<2>();
    uv.rowwise().squaredNorm().maxCoeff(&m_index[0]);
    const Eigen::Matrix<double, Eigen::Dynamic, 2> from = uv.rowwise() - uv.row(m_index[0]);
    from.rowwise().squaredNorm().maxCoeff(&m_index[1]);
    const Eigen::RowVector2d along = from.row(m_index[1]);
    (from.col(0) * along[1] - from.col(1) * along[0]).cwiseAbs().maxCoeff(&m_index[2]);
    Eigen::Matrix3d corner;
    Eigen::Vector3d heights;
    for (std::size_t i = 0; i < 3; ++i) {
      corner.row(static_cast<Eigen::Index>(i)) = m_points.terms.row(m_index[i]);
      heights[static_cast<Eigen::Index>(i)] = m_points.heights[m_index[i]];
    }
    m_plane = corner.partialPivLu().solve(heights);
    const double farthest = distances().cwiseAbs().maxCoeff(&m_index[3]);
    if (std::find(m_index.begin(), m_index.begin() + 3, m_index[3]) != m_index.begin() + 3) {
      m_distance = farthest;  // all points lie on this plane
      return;
    }
    // The signs are those of the one dependence between the four points, turned so that distance >= 0.
    const Eigen::Vector3d weights =
        corner.transpose().partialPivLu().solve(m_points.terms.row(m_index[3]).transpose());
    m_sign[3] = distances()[m_index[3]] < 0 ? -1 : 1;
    for (std::size_t i = 0; i < 3; ++i) {
      m_sign[i] = weights[static_cast<Eigen::Index>(i)] > 0 ? -m_sign[3] : m_sign[3];
    }
    level();
  }

  const Points& m_points;
  std::array<Eigen::Index, 4> m_index{};
  std::array<double, 4> m_sign{1, 1, 1, 1};
  Eigen::Vector3d m_plane = Eigen::Vector3d::Zero();
  double m_distance = 0;
};

/// The point farthest outside the zone or, when cautious, the first outside.
Eigen::Index outsider(const Eigen::VectorXd& distances, double limit, bool cautious) {
  Eigen::Index index = 0;
  if (distances.cwiseAbs().maxCoeff(&index) <= limit) {
    return -1;
  }
  if (cautious) {
    index = 0;
    while (std::abs(distances[index]) <= limit) {
      ++index;
    }
  }
  return index;
}

/// Exchanges until no point is outside; false if that takes more steps than it can.
bool settle(Reference& reference, double tolerance) {
  const Eigen::Index count = reference.distances().size();
  int stalled = 0;
  for (Eigen::Index step = 0; step < 1000 + 20 * count; ++step) {
    const Eigen::VectorXd distances = reference.distances();
    const double before = reference.distance();
    const Eigen::Index entering = outsider(distances, before + tolerance, stalled > 10);
    if (entering < 0) {
      return true;
    }
    reference.exchange(entering, distances[entering] < 0 ? -1 : 1);
    stalled = reference.distance() > before + tolerance ? 0 : stalled + 1;
  }
  return false;
}

}  // namespace

Expected<MinimumZone> fitMinimumZone(std::span<const double> x, std::span<const double> y,
                                     std::span<const double> z) {
  const auto fit = fitPlane(x, y, z);
  if (!fit) {
    return failure(fit.error());
  }
  const Points points = normalise(x, y, *fit);
  // Far above rounding of the residuals, far below any height that is measured.
  const double tolerance = 1e-12 * points.heights.cwiseAbs().maxCoeff();
  Reference reference(points);
  if (!settle(reference, tolerance)) {
    return failure("the minimum zone did not settle");
  }
  const Eigen::VectorXd distances = reference.distances();
  MinimumZone zone;
  zone.width = distances.maxCoeff() - distances.minCoeff();
  const Eigen::Vector3d& correction = reference.plane();
  zone.plane.b = fit->plane.b + correction[1] / points.scale;
  zone.plane.c = fit->plane.c + correction[2] / points.scale;
  zone.plane.a = fit->plane.at(points.centreX, points.centreY) + correction[0] -
                 zone.plane.b * points.centreX - zone.plane.c * points.centreY;
  const double rounding =
      1e-15 * Eigen::Map<const Eigen::VectorXd>(z.data(), distances.size()).cwiseAbs().maxCoeff();
  const double touching = zone.width / 2 * (1 - 1e-9) - rounding;
  for (Eigen::Index i = 0; i < distances.size(); ++i) {
    if (distances[i] >= touching) {
      zone.high.push_back(static_cast<std::size_t>(i));
    }
    if (distances[i] <= -touching) {
      zone.low.push_back(static_cast<std::size_t>(i));
    }
  }
  return zone;
}

}  // namespace fettle::maths
