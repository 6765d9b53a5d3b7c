#pragma once
#include <Eigen/Core>
#include <span>
#include <vector>

#include "core/maths/expected.h"

namespace fettle::maths {

/// First order plus dead time: gain exp(-deadTime s)/(timeConstant s + 1).
struct DeadTimeModel {
  double gain = 0;          ///< change of the output per unit of the input
  double timeConstant = 0;  ///< s, above zero
  double deadTime = 0;      ///< s, not below zero

  /// Output at a time after a unit step of the input.
  double unitStep(double time) const;
};

/// The model through 28.3 % and 63.2 % of a step's change, times counted from the step:
/// T = 1.5 (t63 - t28), L = t63 - T. Exact for a true model: 1 - exp(-1/3) and 1 - exp(-1).
DeadTimeModel throughTwoPoints(double gain, double timeAt28, double timeAt63);

/// Where proportional control alone would swing for ever.
struct UltimatePoint {
  double gain = 0;    ///< Ku, input per unit of the output
  double period = 0;  ///< Pu, s
};

/// Ultimate point of a model with dead time: w L + atan(w T) = pi, Ku = sqrt(1 + (w T)^2)/K, Pu = 2 pi/w.
/// Fails when dead time, time constant or gain are not above zero: then there is none.
Expected<UltimatePoint> ultimatePointOf(const DeadTimeModel& model);

/// The model of this gain whose ultimate point this is: w T = sqrt((K Ku)^2 - 1), L = (pi - atan(w T))/w.
/// Fails unless Ku and Pu are above zero and K Ku above 1: without a lag nothing swings.
Expected<DeadTimeModel> modelWithUltimatePoint(double gain, const UltimatePoint& point);

/// Ultimate gain from a relay's steady swing by its describing function, 4 d/(pi sqrt(a^2 - eps^2))
/// (Astrom and Hagglund 1984, Automatica 20, 645). d is half the relay's step, a half the peak to peak of
/// the output, eps half the hysteresis. For a model with dead time it is 3 to 18 % below the true one.
/// Fails unless a > eps >= 0 and d > 0.
Expected<double> ultimateGainFromRelay(double halfStep, double amplitude, double halfHysteresis);

/// A model fitted to the answer to one step of the input.
struct DeadTimeFit {
  double start = 0;  ///< output before the step
  DeadTimeModel model;
  /// Of (start, gain, time constant, dead time); zero in the row of a dead time held at zero.
  Eigen::Matrix4d covariance = Eigen::Matrix4d::Zero();
  bool deadTimeHeld = false;      ///< the best dead time was below zero and was held at zero
  std::vector<double> residuals;  ///< observed less fitted, in the order of the rows
  double residualStandardDeviation = 0;
  double degreesOfFreedom = 0;

  double standardError(int parameter) const;
};

/// Least squares by Levenberg-Marquardt for start, gain, time constant and dead time, from the 28.3/63.2 %
/// points and, because rows enter the answer one by one as the dead time falls, from half and one and a
/// half times that dead time too; the best of the three counts. Times rise; rows before the step fix the
/// start. Fails on unequal counts, numbers not finite, a step of zero, fewer than four rows after the step,
/// or when the data do not determine the model.
Expected<DeadTimeFit> fitDeadTimeModel(std::span<const double> time, std::span<const double> output,
                                       double stepTime, double stepSize);

}  // namespace fettle::maths
