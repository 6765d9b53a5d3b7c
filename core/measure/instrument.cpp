#include "core/measure/instrument.h"

#include <cmath>
#include <utility>

#include "core/measure/text.h"

namespace fettle {

double Instrument::limitOfError(double reading) const {
  return e + relativeError * std::abs(reading);
}

double Instrument::standardUncertainty(double reading) const {
  const double error = limitOfError(reading);
  return std::sqrt(r * r / 12 + error * error / 3);
}

namespace instruments {

Instrument caliper() {
  return {Text::tr("caliper"), 0.01, 0.03, 0, "mm"};
}
Instrument caliperZeroed() {
  return {Text::tr("caliper zeroed on closed jaws"), 0.01, 0.01, 0, "mm"};
}
Instrument dialIndicator() {
  return {Text::tr("dial indicator"), 0.01, 0.01, 0, "mm"};
}
Instrument micrometer() {
  return {Text::tr("micrometer"), 0.001, 0.004, 0, "mm"};
}
Instrument steelRule() {
  return {Text::tr("steel rule"), 0.5, 0.3, 0, "mm"};
}
Instrument pocketScale() {
  return {Text::tr("pocket scale"), 0.01, 0.02, 0, "g"};
}
Instrument milligramScale() {
  return {Text::tr("milligram scale"), 0.001, 0.003, 0, "g"};
}

Instrument referenceThermometer() {
  // 1.0 °C of the thermometer and 3 °C of the contact, which never repeat exactly, add in squares.
  return {Text::tr("reference thermometer"), 0.1, std::sqrt(1.0 * 1.0 + 3.0 * 3.0), 0, "C"};
}

Instrument multimeter() {
  return {Text::tr("multimeter"), 0, 0, 0.01, "V"};
}
Instrument multimeterOhms() {
  return {Text::tr("multimeter"), 0, 0.2, 0.01, "ohm"};
}
Instrument lowOhmTester() {
  return {Text::tr("four-wire low-ohm tester"), 0.001, 0.01, 0, "ohm"};
}
Instrument alignmentByEye() {
  return {Text::tr("alignment by eye over a mark"), 0, 0.3, 0, "mm"};
}
Instrument probeHeight() {
  return {Text::tr("probe height"), 0.001, 0.005, 0, "mm"};
}
Instrument stopwatch() {
  return {Text::tr("stopwatch"), 0.01, 0.3, 0, "s"};
}
Instrument exact(std::string unit) {
  return {Text::tr("commanded, exact"), 0, 0, 0, std::move(unit)};
}

std::vector<Instrument> bench() {
  return {caliper(),        caliperZeroed(),  dialIndicator(), micrometer(),          steelRule(),
          pocketScale(),    milligramScale(), multimeter(),    multimeterOhms(),      lowOhmTester(),
          alignmentByEye(), probeHeight(),    stopwatch(),     referenceThermometer()};
}

}  // namespace instruments
}  // namespace fettle
