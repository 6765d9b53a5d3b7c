#include "core/steps/power_up/devices.h"

#include <algorithm>

#include "core/measure/text.h"
#include "core/steps/power_up/results.h"

namespace fettle {
namespace {

std::string labelOf(const DeviceCheck& row) {
  const auto all = devicesToTry();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Choice& device) { return device.key == row.device; });
  const std::string label = found == all.end() ? Text::tr("something tried") : found->label;
  return row.which.empty() ? label : label + " (" + row.which + ")";
}

void noteWrong(StepResult& result, const DeviceCheck& row) {
  const std::string unsaid = Text::tr("not said");
  result.addFinding(
      "device-wrong", Severity::fault,
      say(Text::tr("{0}: expected: {1}; observed: {2}. Switch off and mend it first."), labelOf(row),
          row.expected.empty() ? unsaid : row.expected, row.observed.empty() ? unsaid : row.observed),
      {}, fmt::format("devices[{}]", row.number));
}

bool isProved(const std::vector<DeviceCheck>& rows, const std::string& device) {
  return std::any_of(rows.begin(), rows.end(),
                     [&](const DeviceCheck& row) { return row.device == device && *row.ok; });
}

void noteUntried(StepResult& result, const std::vector<DeviceCheck>& rows) {
  std::string untried;
  for (const auto& device : devicesToTry()) {
    const bool tried = std::any_of(rows.begin(), rows.end(),
                                   [&](const DeviceCheck& row) { return row.device == device.key; });
    const bool said = device.key == "emergency_stop" || device.key == "sensor_unplugged";
    if (!tried && !said && device.key != "other") {
      untried += (untried.empty() ? "" : "; ") + device.label;
    }
  }
  if (!untried.empty()) {
    result.addFinding("not-tried", Severity::caution, say(Text::tr("Not tried: {0}."), untried), {},
                      "devices");
  }
}

}  // namespace

void judgeDevices(StepResult& result, const std::vector<DeviceCheck>& rows) {
  int wrong = 0;
  for (const auto& row : rows) {
    if (row.device.empty()) {  // counts all the same: what went wrong is not hidden by a blank
      result.want({fmt::format("devices[{}].device", row.number)});
    }
    if (!*row.ok) {
      ++wrong;
      noteWrong(result, row);
    }
  }
  result.give(keysOf<PowerUpResults>().devicesWrong, wrong);
  if (!isProved(rows, "emergency_stop")) {
    result.addFinding("stop-not-proved", Severity::fault,
                      Text::tr("It is not proved yet that the emergency stop really cuts the heaters."),
                      "safety", "devices");
  }
  if (!isProved(rows, "sensor_unplugged")) {
    result.addFinding(
        "sensor-fault-not-proved", Severity::fault,
        Text::tr("It is not proved yet that a sensor unplugged cold gives a fault: a torn lead would "
                 "heat without end."),
        {}, "devices");
  }
  noteUntried(result, rows);
}

}  // namespace fettle
