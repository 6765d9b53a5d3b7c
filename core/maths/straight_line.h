#pragma once
#include <Eigen/Core>
#include <optional>
#include <span>
#include <vector>

#include "core/maths/expected.h"
#include "core/maths/interval.h"

namespace fettle::maths {

/// y = intercept + slope x by least squares.
struct StraightLine {
  double intercept = 0;
  double slope = 0;
  Eigen::Matrix2d covariance = Eigen::Matrix2d::Zero();  ///< of (intercept, slope); zero without scatter
  double residualStandardDeviation = 0;  ///< of one reading of weight 1; 0 without degrees of freedom
  double residualSumOfSquares = 0;       ///< weighted
  double degreesOfFreedom = 0;           ///< n - 2; 0: nothing is known of the scatter
  std::vector<double> residuals;         ///< observed less fitted, in the order of the points
  double meanX = 0;                      ///< weighted
  double sumOfWeights = 0;               ///< n when unweighted
  double sumOfSquaresX = 0;              ///< weighted, about meanX

  double at(double x) const { return intercept + slope * x; }
  double slopeStandardError() const;
  double interceptStandardError() const;
  /// Standard error of the line itself at x (Draper and Smith 1998, eq. 3.1.2).
  double standardErrorAt(double x) const;
  /// Standard error of the mean of so many new readings of weight 1 at x (Draper and Smith 1998, 3.1.4).
  double predictionStandardErrorAt(double x, double readings = 1) const;
  /// Two-sided p of a slope of zero by Student's t; 1 without degrees of freedom.
  double slopeProbability() const;
};

/// Fits a straight line to two points or more. Weights are relative (proportional to 1/variance), the
/// scatter is taken from the residuals; none given: all 1. Sums are taken about the mean
/// (Draper and Smith 1998, Applied Regression Analysis, 1.2 and 9.2).
/// Fails on unequal counts, fewer than two points, all x equal, numbers not finite or weights not positive.
Expected<StraightLine> fitStraightLine(std::span<const double> x, std::span<const double> y,
                                       std::span<const double> weights = {});

/// The x at which a line reaches a given y.
struct InversePrediction {
  double value = 0;
  double standardError = 0;  ///< delta method
  std::optional<Interval>
      interval;  ///< Fieller; none when it is not finite or nothing is known of the scatter
};

/// x where the line's true mean response is y, with its Fieller interval at the given two-sided
/// confidence (Fieller 1954, J. R. Stat. Soc. B 16, 175; Draper and Smith 1998, 3.2). The interval is
/// finite only if the slope differs from zero at that confidence. Fails when the slope is zero.
Expected<InversePrediction> predictInverse(const StraightLine& line, double y, double confidence = 0.95);

/// The same for an unknown x of which new readings of weight 1 were taken; their scatter about their mean
/// is pooled with the line's (Greenwell and Schubert Kabban 2014, R Journal 6/1, eq. 2 to 4).
/// Fails without readings.
Expected<InversePrediction> predictInverse(const StraightLine& line, std::span<const double> readings,
                                           double confidence = 0.95);

}  // namespace fettle::maths
