#pragma once
#include <span>
#include <vector>

namespace fettle::maths {

struct ContourPoint {
  double x, y;
};

/// One line of equal height. A closed one ends where it began.
struct Contour {
  std::vector<ContourPoint> points;
  bool closed = false;
};

/// Lines at one height over a net z[row of y][column of x], by marching squares with straight interpolation
/// along the sides of the cells (Lorensen and Cline, 1987, in two dimensions); a saddle is settled by the
/// mean of its four corners. x and y strictly rise or fall. Cells with a corner that is not finite carry no
/// line.
std::vector<Contour> contoursAt(double level, std::span<const double> x, std::span<const double> y,
                                std::span<const std::vector<double>> z);

}  // namespace fettle::maths
