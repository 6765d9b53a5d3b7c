#include "core/steps/power_up/devices.h"

#include <algorithm>

#include "core/measure/text.h"

namespace fettle {
namespace {

std::string labelOf(const DeviceCheck& row) {
  const auto all = devicesToTry();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Choice& device) { return device.key == row.device; });
  const std::string label = found == all.end() ? row.device : found->label;
  return row.which.empty() ? label : label + " (" + row.which + ")";
}

void noteWrong(StepResult& result, const DeviceCheck& row) {
  const std::string unsaid = Text::tr("not said");
  result.addFinding(
      "device-wrong", Severity::fault,
      say(Text::tr("{0}: expected: {1}; observed: {2}. Switch off and mend it first."), labelOf(row),
          row.expected.empty() ? unsaid : row.expected, row.observed.empty() ? unsaid : row.observed));
}

bool isProved(const std::vector<DeviceCheck>& rows, const std::string& device) {
  return std::any_of(rows.begin(), rows.end(), [&](const DeviceCheck& row) {
    return row.device == device && row.ok.value_or(false);
  });
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
    result.addFinding("not-tried", Severity::caution, say(Text::tr("Not tried: {0}."), untried));
  }
}

}  // namespace

std::vector<Choice> devicesToTry() {
  return {
      {"axis_direction", Text::tr("axis moves the right way")},
      {"home_switch", Text::tr("home switch answers")},
      {"first_homing", Text::tr("first homing, from mid travel")},
      {"fan", Text::tr("fan turns, the right way")},
      {"fan_low_duty", Text::tr("fan starts at low duty")},
      {"emergency_stop", Text::tr("emergency stop cuts the heaters")},
      {"sensor_unplugged", Text::tr("sensor unplugged cold gives a fault")},
      {"other", Text::tr("something else")},
  };
}

void judgeDevices(StepResult& result, const std::vector<DeviceCheck>& rows) {
  int wrong = 0;
  for (const auto& row : rows) {
    if (row.device.empty() || !row.ok) {
      result.missing.push_back("devices[" + std::to_string(row.number) + "]." +
                               (row.device.empty() ? "device" : "ok"));
    }
    if (row.ok && !*row.ok) {
      ++wrong;
      noteWrong(result, row);
    }
  }
  result.give("devices_wrong", wrong, "1");
  if (!isProved(rows, "emergency_stop")) {
    result.addFinding("stop-not-proved", Severity::fault,
                      Text::tr("It is not proved yet that the emergency stop really cuts the heaters."),
                      "safety");
  }
  if (!isProved(rows, "sensor_unplugged")) {
    result.addFinding(
        "sensor-fault-not-proved", Severity::fault,
        Text::tr("It is not proved yet that a sensor unplugged cold gives a fault: a torn lead would "
                 "heat without end."));
  }
  noteUntried(result, rows);
}

}  // namespace fettle
