#include "core/steps/bed_shape/density.h"

#include <algorithm>
#include <cmath>

#include "core/maths/bicubic_spline.h"

namespace fettle {
namespace {

constexpr double wantedError = 0.02;           // mm; common practice, no source
constexpr double scatterFactor = 1.3;          // common practice, no source
constexpr std::size_t fewestLinesToHalve = 7;  // leaves four, the fewest of a cubic spline
constexpr int fewestProposed = 5;

bool oddAndLarge(std::size_t lines) {
  return lines >= fewestLinesToHalve && lines % 2 == 1;
}

std::vector<double> everySecond(const std::vector<double>& lines) {
  std::vector<double> kept;
  for (std::size_t i = 0; i < lines.size(); i += 2) {
    kept.push_back(lines[i]);
  }
  return kept;
}

double widestGap(const std::vector<double>& lines) {
  double widest = 0;
  for (std::size_t i = 1; i < lines.size(); ++i) {
    widest = std::max(widest, lines[i] - lines[i - 1]);
  }
  return widest;
}

int linesAtSpacing(const std::vector<double>& lines, double spacing) {
  constexpr double rounding = 1e-9;
  const double gaps = std::ceil((lines.back() - lines.front()) / spacing - rounding);
  return std::max(static_cast<int>(gaps) + 1, fewestProposed);
}

}  // namespace

std::optional<DensityAdvice> densityAdvice(const GridReadings& grid, double probeScatter) {
  if (!oddAndLarge(grid.x.size()) || !oddAndLarge(grid.y.size())) {
    return std::nullopt;
  }
  const auto x = everySecond(grid.x);
  const auto y = everySecond(grid.y);
  Eigen::MatrixXd kept(static_cast<Eigen::Index>(y.size()), static_cast<Eigen::Index>(x.size()));
  for (Eigen::Index row = 0; row < kept.rows(); ++row) {
    for (Eigen::Index column = 0; column < kept.cols(); ++column) {
      kept(row, column) = grid.z(2 * row, 2 * column);
    }
  }
  const auto spline = maths::BicubicSpline::through(x, y, kept);
  if (!spline) {
    return std::nullopt;
  }
  const double largest = (spline->atGrid(grid.x, grid.y) - grid.z).cwiseAbs().maxCoeff();
  DensityAdvice advice;
  advice.error = std::max(largest - scatterFactor * probeScatter, 0.0);
  const double shorter = std::min(grid.x.back() - grid.x.front(), grid.y.back() - grid.y.front());
  advice.spacing = shorter / (fewestProposed - 1);
  if (advice.error > 0) {
    const double left = std::min(widestGap(x), widestGap(y));
    advice.spacing = std::min(advice.spacing, left * std::sqrt(wantedError / advice.error));
  }
  advice.columns = linesAtSpacing(grid.x, advice.spacing);
  advice.rows = linesAtSpacing(grid.y, advice.spacing);
  return advice;
}

}  // namespace fettle
