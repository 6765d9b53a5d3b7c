#pragma once

namespace fettle::maths {

/// A closed interval; its ends are finite unless the function that made it says otherwise.
struct Interval {
  double low;
  double high;
};

/// Outer ends of a profile confidence set, cut to the tested range.
struct ProfileInterval {
  double low;
  double high;
  bool meetsRangeLow;   ///< the set reaches the lower end of the tested range: no lower limit is known
  bool meetsRangeHigh;  ///< the set reaches the upper end of the tested range: no upper limit is known
};

}  // namespace fettle::maths
