#include "core/steps/bed_shape/form.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/maths/least_squares.h"
#include "core/maths/minimum_zone.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/bed_shape/results.h"

namespace fettle {
namespace {

constexpr std::size_t fewestPoints = 3;
constexpr double per100mm = 100;

double span(const std::vector<double>& values) {
  const auto [least, greatest] = std::minmax_element(values.begin(), values.end());
  return *greatest - *least;
}

Quantity withUncertainty(double value, const char* unit, double u) {
  const Contribution part[] = {{u}};
  return combinedQuantity(value, unit, part);
}

/// Standard uncertainties of least-squares coefficients for a standard uncertainty of 1 of each height.
Eigen::VectorXd sensitivities(const Eigen::MatrixXd& design) {
  const auto covariance = maths::unscaledCovariance(design);
  return covariance ? Eigen::VectorXd(covariance->diagonal().cwiseSqrt())
                    : Eigen::VectorXd::Zero(design.cols());
}

Eigen::MatrixXd planeDesign(const BedHeights& heights) {
  const auto n = static_cast<Eigen::Index>(heights.count());
  Eigen::MatrixXd design(n, 3);
  const auto x = Eigen::Map<const Eigen::VectorXd>(heights.x.data(), n);
  const auto y = Eigen::Map<const Eigen::VectorXd>(heights.y.data(), n);
  design << Eigen::VectorXd::Ones(n), x.array() - x.mean(), y.array() - y.mean();
  return design;
}

Eigen::MatrixXd quadraticDesign(const BedHeights& heights, const maths::QuadraticSurface& surface) {
  const auto n = static_cast<Eigen::Index>(heights.count());
  const auto x = Eigen::Map<const Eigen::VectorXd>(heights.x.data(), n);
  const auto y = Eigen::Map<const Eigen::VectorXd>(heights.y.data(), n);
  const Eigen::ArrayXd u = (x.array() - surface.middleX) / surface.halfRangeX;
  const Eigen::ArrayXd v = (y.array() - surface.middleY) / surface.halfRangeY;
  Eigen::MatrixXd design(n, 6);
  design << Eigen::VectorXd::Ones(n), u, v, u * u, v * v, u * v;
  return design;
}

void giveTilt(StepResult& result, const BedHeights& heights, const maths::PlaneFit& fit,
              const ProbeTrust& probe) {
  const Eigen::VectorXd share = sensitivities(planeDesign(heights));
  const double common = probe.instrument.e / std::sqrt(3.0);
  const auto tilt = [&](double slope, double sensitivity, double overSpan) {
    const Contribution parts[] = {{per100mm * sensitivity * probe.ofOneHeight()},
                                  {per100mm * common / overSpan}};
    return combinedQuantity(per100mm * slope, "mm/100mm", parts);
  };
  const auto& key = keysOf<BedShapeResults>();
  result.give(key.tiltX, tilt(fit.plane.b, share[1], span(heights.x)));
  result.give(key.tiltY, tilt(fit.plane.c, share[2], span(heights.y)));
}

void giveRange(StepResult& result, const BedHeights& heights, const ProbeTrust& probe) {
  if (heights.count() > 1) {
    result.give(keysOf<BedShapeResults>().rangeRaw,
                withUncertainty(span(heights.z), "mm", std::sqrt(2.0) * probe.ofOneHeight()));
  }
}

void giveFlatness(StepResult& result, const BedHeights& heights, const maths::PlaneFit& fit,
                  const ProbeTrust& probe) {
  const double ofDifference = std::sqrt(2.0) * probe.ofOneHeight();
  const double ofMean = probe.ofOneHeight() / std::sqrt(static_cast<double>(heights.count()));
  const auto& key = keysOf<BedShapeResults>();
  result.give(key.flatnessLeastSquares, withUncertainty(fit.peakToValley, "mm", ofDifference));
  // Of sqrt(Σ r²/n) by every height is r/(n·rms); together they make u_n/√n.
  result.give(key.rms, withUncertainty(fit.rootMeanSquare, "mm", ofMean));
  if (const auto zone = maths::fitMinimumZone(heights.x, heights.y, heights.z)) {
    result.give(key.flatnessMinimumZone, withUncertainty(zone->width, "mm", ofDifference));
  } else {
    result.withhold(key.flatnessMinimumZone, zone.error());
  }
}

std::optional<maths::QuadraticSurface> giveBow(StepResult& result, const BedHeights& heights,
                                               const ProbeTrust& probe) {
  const auto& key = keysOf<BedShapeResults>();
  const std::array<ResultId, 3> ids{key.bowX, key.bowY, key.twist};
  const auto surface = maths::fitQuadraticSurface(heights.x, heights.y, heights.z);
  if (!surface) {
    for (const auto& id : ids) {
      result.withhold(id, Text::tr("bow and twist need six points or more, on three lines each way"));
    }
    return std::nullopt;
  }
  const Eigen::VectorXd share = sensitivities(quadraticDesign(heights, *surface));
  const std::array<double, 3> values{surface->bowX, surface->bowY, surface->twist};
  for (std::size_t i = 0; i < ids.size(); ++i) {
    const double u = share[static_cast<Eigen::Index>(i) + 3] * probe.ofOneHeight();
    result.give(ids[i], withUncertainty(values[i], "mm", u));
  }
  return *surface;
}

}  // namespace

double ProbeTrust::ofOneHeight() const {
  return std::sqrt(instrument.r * instrument.r / 12 + scatter * scatter);
}

BedForm giveForm(StepResult& result, const BedHeights& heights, const ProbeTrust& probe) {
  giveRange(result, heights, probe);
  if (heights.count() < fewestPoints) {
    throw Refusal{say(Text::tr("Points: {0} different points are too few for a plane; three or more that "
                               "are not on one line are needed."),
                      heights.count()),
                  heights.field};
  }
  const auto plane = maths::fitPlane(heights.x, heights.y, heights.z);
  if (!plane) {
    throw Refusal{Text::tr("Points: all of them lie on one line; a plane needs three or more that do not."),
                  heights.field};
  }
  BedForm form;
  form.plane = *plane;
  giveTilt(result, heights, form.plane, probe);
  giveFlatness(result, heights, form.plane, probe);
  form.quadratic = giveBow(result, heights, probe);
  return form;
}

}  // namespace fettle
