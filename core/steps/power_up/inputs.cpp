#include "core/steps/power_up/inputs.h"

#include "core/measure/text.h"
#include "core/steps/contract/heaters.h"

namespace fettle {
namespace {

Instrument roomThermometer() {
  return {Text::tr("room thermometer"), 0.1, 1.0, 0, "C"};
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

std::vector<Choice> firstHeatItems() {
  return {
      {"steps_of_50", Text::tr("heated in steps of 50 °C")},
      {"ventilated", Text::tr("room ventilated")},
      {"attended", Text::tr("somebody stood by all the time")},
      {"no_smoke", Text::tr("no smoke, no smell of burning, no discolouring")},
      {"terminals", Text::tr("terminals tightened again after the first heat cycle, cold and unplugged")},
      {"nozzle", Text::tr("nozzle tightened hot")},
  };
}

void DeviceCheck::describe(FieldList& columns) {
  columns.choice("device", device, Text::tr("What is tried"), devicesToTry());
  columns.text("which", which, Text::tr("Which"))
      .help(Text::tr("Axis, fan or sensor, where there are several."));
  columns.text("expected", expected, Text::tr("Expected"));
  columns.text("observed", observed, Text::tr("Observed"));
  columns.yesNo("ok", ok, Text::tr("Ok")).required();
}

void RestReading::describe(FieldList& columns) {
  columns.choice("heater", heater, Text::tr("Sensor of"), heaterChoices()).required();
  columns.number("indicated_C", indicated, Text::tr("Indicated"), "C").bounds(-273, 1500).required();
}

void HeatRise::describe(FieldList& columns) {
  columns.choice("heater", heater, Text::tr("Heater"), heaterChoices()).required();
  columns.number("start_C", start, Text::tr("Start"), "C").bounds(-60, 600).required();
  columns.number("end_C", end, Text::tr("End"), "C").bounds(-60, 600).required();
  columns.number("seconds", seconds, Text::tr("Time"), "s").bounds(0.5, 3600).required();
  columns.number("other_rise_C", otherRise, Text::tr("Greatest rise of another sensor"), "C")
      .bounds(-100, 600)
      .help(Text::tr("In the same time."));
  columns.number("rest_s_C", restScatter, Text::tr("Scatter at rest"), "C")
      .bounds(0, 50)
      .folded()
      .help(Text::tr("Standard deviation of the sensor before heating; blank: below 0.3 °C."));
  columns.number("rise_window_s", window, Text::tr("Window"), "s")
      .bounds(1, 600)
      .folded()
      .help(Text::tr("Time within which a rise must show; blank: hot end 15, bed 90, chamber 300."));
}

void PowerUpInputs::describe(FieldList& fields) {
  fields.table("devices", devices, Text::tr("Devices"))
      .help(Text::tr("One row for each thing tried: what should happen, what did. Directions and switches "
                     "by hand before any homing."));
  fields.number("room_C", room, Text::tr("Room"), "C").bounds(-20, 60).readWith(roomThermometer());
  fields.table("sensors", sensors, Text::tr("Sensors at rest"))
      .help(Text::tr("With everything cold for some hours."));
  fields.yesNo("tripped", tripped, Text::tr("Runaway guard tripped"))
      .help(Text::tr("Heater lead unplugged cold with the mains off, then a target of 50 °C."));
  fields.number("trip_s", tripTime, Text::tr("Time to the trip"), "s")
      .bounds(0, 3600)
      .readWith(instruments::stopwatch());
  fields.table("rises", rises, Text::tr("First rises"))
      .help(
          Text::tr("One heater at a time, from cold: has its own sensor moved, and more than the others?"));
  fields.checklist("first_heat", firstHeat, Text::tr("First heat"), firstHeatItems());
}

Json devicesOf(const MachineSheet& sheet) {
  Json rows = Json::array();
  const auto add = [&](const char* device, const std::string& which, const std::string& expected) {
    rows.push_back({{"device", device}, {"which", which}, {"expected", expected}});
  };
  for (const char* axis : {"x", "y", "z"}) {
    add("axis_direction", axis, Text::tr("moves towards higher numbers when told to"));
  }
  for (const char* axis : {"x", "y", "z"}) {
    add("home_switch", axis, Text::tr("reads closed when pressed by hand, open when let go"));
  }
  add("first_homing", Text::tr("all axes"), Text::tr("stops at each switch, from mid travel"));
  add("fan", Text::tr("hot end"), Text::tr("blows on the heat sink"));
  add("fan", Text::tr("part"), Text::tr("blows on the print"));
  add("fan_low_duty", Text::tr("part"), Text::tr("starts and keeps turning"));
  add("emergency_stop", "", Text::tr("heaters lose their power"));
  add("sensor_unplugged", heaterName("hot_end"), Text::tr("a fault, and no heat"));
  if (sheet.bedPower || sheet.bedMax) {
    add("sensor_unplugged", heaterName("bed"), Text::tr("a fault, and no heat"));
  }
  return rows;
}

}  // namespace fettle
