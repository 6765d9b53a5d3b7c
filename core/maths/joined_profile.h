#pragma once
#include <optional>

#include "core/maths/joined_lines.h"

namespace fettle::maths {

/// Collects the outer ends of a profile confidence set over the range of the points.
class OuterEnds {
 public:
  /// Starts from the estimate, which is always in the set.
  OuterEnds(const JoinedLines& lines, double estimate);

  void include(double theta);
  void includeAll();
  /// The ends found, cut to the range, from the origin of the caller's x.
  ProfileInterval interval() const;

 private:
  double m_origin;
  double m_first;
  double m_last;
  double m_low;
  double m_high;
};

/// RSS up to which a profiled value is in the confidence set:
/// (RSS - least)/(least/dof) <= F(confidence; 1, dof). Needs dof > 0.
double profileLimit(double leastSumOfSquares, double degreesOfFreedom, double confidence);

/// Includes every psi with RSS(psi) <= limit where the right line falls.
void includeFallingJoins(const JoinedLines& lines, double limit, OuterEnds& ends);

}  // namespace fettle::maths
