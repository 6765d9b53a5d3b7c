#pragma once
#include <string>
#include <vector>

namespace fettle {

/// What a column was read with. The resolution acts on each reading by itself, the limit of error is
/// common to all readings of one instrument in one step.
struct Instrument {
  std::string name;
  double r = 0;                     ///< resolution, in the unit of the column
  double e = 0;                     ///< limit of error, half width, in the unit of the column
  double relativeError = 0;         ///< limit of error that grows with the reading, as a fraction of it
  std::string unit = "mm";          ///< unit of r and e
  std::string identification = {};  ///< serial or inventory number of the one on this bench
  std::string calibratedOn = {};    ///< date of its last calibration; empty: not known

  friend bool operator==(const Instrument&, const Instrument&) = default;

  /// Limit of error at a reading.
  double limitOfError(double reading) const;
  /// Standard uncertainty of one reading, rectangular distributions: sqrt(r²/12 + e²/3)
  /// (JCGM 100:2008, 4.3.7).
  double standardUncertainty(double reading) const;
};

/// The instruments of an ordinary bench with their default resolution and limit of error
/// (common practice, no source). The names are stable words; labels are made for display.
namespace instruments {
Instrument caliper();
Instrument caliperZeroed();
Instrument dialIndicator();
Instrument micrometer();
Instrument steelRule();
Instrument pocketScale();
Instrument milligramScale();
Instrument referenceThermometer();
Instrument multimeter();
Instrument multimeterOhms();
Instrument lowOhmTester();
Instrument alignmentByEye();
Instrument probeHeight();
Instrument stopwatch();
Instrument exact(std::string unit);
/// All of the above, to choose from.
std::vector<Instrument> bench();
}  // namespace instruments

}  // namespace fettle
