#include "core/maths/joined_profile.h"

#include <algorithm>

#include "core/maths/distributions.h"

namespace fettle::maths {

OuterEnds::OuterEnds(const JoinedLines& lines, double estimate)
    : m_origin(lines.origin()),
      m_first(lines.first()),
      m_last(lines.last()),
      m_low(estimate),
      m_high(estimate) {}

void OuterEnds::include(double theta) {
  m_low = std::min(m_low, theta);
  m_high = std::max(m_high, theta);
}

void OuterEnds::includeAll() {
  include(m_first);
  include(m_last);
}

ProfileInterval OuterEnds::interval() const {
  // Ends that miss the range by rounding alone meet it.
  const double rounding = 1e-12 * (m_last - m_first);
  return {m_origin + std::clamp(m_low, m_first, m_last), m_origin + std::clamp(m_high, m_first, m_last),
          m_low <= m_first + rounding, m_high >= m_last - rounding};
}

double profileLimit(double leastSumOfSquares, double degreesOfFreedom, double confidence) {
  return leastSumOfSquares * (1 + fQuantile(confidence, 1, degreesOfFreedom) / degreesOfFreedom);
}

void includeFallingJoins(const JoinedLines& lines, double limit, OuterEnds& ends) {
  for (const JoinedLines::Gap& gap : lines.gaps()) {
    if (!gap.piece) {
      if (gap.residualSumOfSquares <= limit) {
        ends.include(gap.low);
        ends.include(gap.high);
      }
      continue;
    }
    for (const Interval& stretch : gap.piece->within(limit)) {
      const double low = std::max(stretch.low, gap.low);
      const double high = std::min(stretch.high, gap.high);
      if (low > high) {
        continue;
      }
      // Within a stretch the slope keeps its sign: a level right line would be over the limit.
      const auto coefficients = gap.piece->coefficientsAt((low + high) / 2);
      if (JoinedLines::rightSlope(coefficients) < 0) {
        ends.include(low);
        ends.include(high);
      }
    }
  }
}

}  // namespace fettle::maths
