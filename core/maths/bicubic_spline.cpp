#include "core/maths/bicubic_spline.h"

namespace fettle::maths {

Expected<BicubicSpline> BicubicSpline::through(std::span<const double> x, std::span<const double> y,
                                               const Eigen::MatrixXd& z) {
  if (z.rows() != static_cast<Eigen::Index>(y.size()) || z.cols() != static_cast<Eigen::Index>(x.size())) {
    return failure("a grid needs one row of heights for each y and one column for each x");
  }
  std::vector<CubicSpline> rows;
  for (Eigen::Index row = 0; row < z.rows(); ++row) {
    std::vector<double> heights(x.size());
    Eigen::Map<Eigen::RowVectorXd>(heights.data(), z.cols()) = z.row(row);
    const auto spline = CubicSpline::through(x, heights);
    if (!spline) {
      return failure(spline.error());
    }
    rows.push_back(*spline);
  }
  // The check of y is the spline's own; the heights do not matter to it.
  if (const auto column = CubicSpline::through(y, std::vector<double>(y.size())); !column) {
    return failure(column.error());
  }
  return BicubicSpline(y, std::move(rows));
}

BicubicSpline::BicubicSpline(std::span<const double> y, std::vector<CubicSpline> rows)
    : m_y(y.begin(), y.end()), m_rows(std::move(rows)) {}

CubicSpline BicubicSpline::across(double x) const {
  std::vector<double> heights;
  heights.reserve(m_rows.size());
  for (const CubicSpline& row : m_rows) {
    heights.push_back(row(x));
  }
  return CubicSpline::through(m_y, heights).value();
}

double BicubicSpline::operator()(double x, double y) const {
  return across(x)(y);
}

Eigen::MatrixXd BicubicSpline::atGrid(std::span<const double> x, std::span<const double> y) const {
  Eigen::MatrixXd heights(static_cast<Eigen::Index>(y.size()), static_cast<Eigen::Index>(x.size()));
  Eigen::Index column = 0;
  for (const double at : x) {
    const CubicSpline spline = across(at);
    Eigen::Index row = 0;
    for (const double height : y) {
      heights(row++, column) = spline(height);
    }
    ++column;
  }
  return heights;
}

}  // namespace fettle::maths
