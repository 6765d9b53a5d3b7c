#include "core/steps/contract/machine_sheet.h"

#include <cmath>
#include <numbers>

#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

std::vector<Choice> motions() {
  return {{"cartesian", Text::tr("cartesian, bed moves in z or not at all")},
          {"moving-bed", Text::tr("bed moves in y")},
          {"crossed-belt", Text::tr("two crossed belts")},
          {"delta", Text::tr("delta")}};
}

void checkRange(std::vector<Finding>& findings, const std::string& what, std::optional<double> low,
                std::optional<double> high) {
  if (low && high && *low >= *high) {
    findings.push_back({"sheet-range",
                        Severity::fault,
                        say(Text::tr("{0}: the lower limit {1} mm is not below the upper limit {2} mm."),
                            what, formatNumber(*low), formatNumber(*high)),
                        {}});
  }
}

void checkBedInTravel(std::vector<Finding>& findings, const std::string& axis, std::optional<double> bedLow,
                      std::optional<double> bedHigh, std::optional<double> low,
                      std::optional<double> high) {
  if (bedLow && low && *bedLow < *low) {
    findings.push_back(
        {"sheet-bed-outside",
         Severity::note,
         say(Text::tr("The bed begins at {0} = {1} mm, the travel only at {2} mm: the nozzle cannot "
                      "reach that edge."),
             axis, formatNumber(*bedLow), formatNumber(*low)),
         {}});
  }
  if (bedHigh && high && *bedHigh > *high) {
    findings.push_back(
        {"sheet-bed-outside",
         Severity::note,
         say(Text::tr("The bed ends at {0} = {1} mm, the travel already at {2} mm: the nozzle cannot "
                      "reach that edge."),
             axis, formatNumber(*bedHigh), formatNumber(*high)),
         {}});
  }
}

}  // namespace

void AxisDrive::describe(FieldList& fields, const std::string& axis) {
  const std::string name = axis + ".";
  const std::string of = " " + axis;
  fields.choice(name + "drive", drive, Text::tr("Drive") + of,
                {{"belt", Text::tr("belt")}, {"screw", Text::tr("screw")}});
  fields.number(name + "pitch_mm", pitch, Text::tr("Belt pitch") + of, "mm")
      .bounds(0.1, 50)
      .onlyWhen(name + "drive", {"belt"});
  fields.number(name + "teeth", teeth, Text::tr("Pulley teeth") + of, "1")
      .bounds(4, 500)
      .whole()
      .onlyWhen(name + "drive", {"belt"});
  fields.number(name + "lead_mm", lead, Text::tr("Screw lead") + of, "mm")
      .bounds(0.1, 100)
      .onlyWhen(name + "drive", {"screw"});
  fields.number(name + "step_angle_deg", stepAngle, Text::tr("Full step") + of, "deg").bounds(0.01, 90);
  fields.number(name + "microsteps", microsteps, Text::tr("Microsteps") + of, "1").bounds(1, 1024).whole();
  fields.number(name + "motor_current_A", motorCurrent, Text::tr("Motor current") + of, "A").bounds(0, 50);
  fields.number(name + "motor_rated_A", motorRated, Text::tr("Rated current") + of, "A").bounds(0.01, 50);
  fields.choice(name + "current_is", currentIs, Text::tr("Current is given as") + of,
                {{"rms", Text::tr("rms")}, {"peak", Text::tr("peak")}});
}

void MachineSheet::describe(FieldList& fields) {
  fields.text("name", name, Text::tr("Name")).required();
  fields.text("serial", serial, Text::tr("Serial number"));
  fields.text("location", location, Text::tr("Location"));
  fields.choice("motion", motion, Text::tr("Motion"), motions());
  const auto length = [&](const char* key, std::optional<double>& member, const std::string& label) {
    return fields.number(key, member, label, "mm").bounds(-5000, 5000);
  };
  length("travel_min_x", travelMinX, Text::tr("Travel from x"));
  length("travel_max_x", travelMaxX, Text::tr("Travel to x"));
  length("travel_min_y", travelMinY, Text::tr("Travel from y"));
  length("travel_max_y", travelMaxY, Text::tr("Travel to y"));
  length("travel_min_z", travelMinZ, Text::tr("Travel from z"));
  length("travel_max_z", travelMaxZ, Text::tr("Travel to z"));
  fields.choice("bed_shape", bedShape, Text::tr("Bed shape"),
                {{"rectangle", Text::tr("rectangle")}, {"disc", Text::tr("disc")}});
  length("bed_min_x", bedMinX, Text::tr("Bed from x")).onlyWhen("bed_shape", {"rectangle"});
  length("bed_max_x", bedMaxX, Text::tr("Bed to x")).onlyWhen("bed_shape", {"rectangle"});
  length("bed_min_y", bedMinY, Text::tr("Bed from y")).onlyWhen("bed_shape", {"rectangle"});
  length("bed_max_y", bedMaxY, Text::tr("Bed to y")).onlyWhen("bed_shape", {"rectangle"});
  fields.number("bed_radius", bedRadius, Text::tr("Bed radius"), "mm")
      .bounds(10, 2500)
      .onlyWhen("bed_shape", {"disc"});
  fields.number("nozzle_mm", nozzle, Text::tr("Nozzle bore"), "mm").bounds(0.05, 5);
  fields.number("filament_mm", filament, Text::tr("Filament, nominal"), "mm").bounds(0.5, 5);
  fields.choice("feeder", feeder, Text::tr("Feeder"),
                {{"direct", Text::tr("direct")}, {"tube", Text::tr("through a tube")}});
  fields.number("hot_end_power_W", hotEndPower, Text::tr("Hot end power"), "W").bounds(1, 1000);
  fields.number("hot_end_max_C", hotEndMax, Text::tr("Hot end, highest"), "C").bounds(50, 600);
  fields.yesNo("hot_end_liner", hotEndLiner, Text::tr("Polymer tube down to the nozzle"));
  fields.number("bed_power_W", bedPower, Text::tr("Bed power"), "W").bounds(1, 5000);
  fields.number("bed_max_C", bedMax, Text::tr("Bed, highest"), "C").bounds(30, 300);
  fields.number("supply_V", supplyVoltage, Text::tr("Supply voltage"), "V").bounds(1, 400);
  fields.number("supply_W", supplyPower, Text::tr("Supply power"), "W").bounds(1, 10000);
  x.describe(fields, "x");
  y.describe(fields, "y");
  z.describe(fields, "z");
}

const std::vector<Field>& machineSheetFields() {
  static const std::vector<Field> fields = describedFields<MachineSheet>();
  return fields;
}

std::string sheetLabel(const std::string& key) {
  const Field* field = findField(machineSheetFields(), key);
  return field ? field->label : key;
}

tl::expected<MachineSheet, std::string> readMachineSheet(const Json& json,
                                                         std::vector<std::string>* unknown) {
  if (!json.is_object()) {
    return tl::unexpected(Text::tr("A machine sheet is one flat JSON object."));
  }
  MachineSheet sheet;
  FieldList list;
  sheet.describe(list);
  FieldReader reader;
  list.read(json, reader);
  if (reader.problem()) {
    return tl::unexpected(say(Text::tr("Machine sheet, {0}"), *reader.problem()));
  }
  if (unknown) {
    *unknown = reader.unknown();
  }
  return sheet;
}

std::vector<Finding> checkMachineSheet(const MachineSheet& sheet) {
  std::vector<Finding> findings;
  checkRange(findings, Text::tr("Travel x"), sheet.travelMinX, sheet.travelMaxX);
  checkRange(findings, Text::tr("Travel y"), sheet.travelMinY, sheet.travelMaxY);
  checkRange(findings, Text::tr("Travel z"), sheet.travelMinZ, sheet.travelMaxZ);
  if (sheet.bedShape == "rectangle") {
    checkRange(findings, Text::tr("Bed x"), sheet.bedMinX, sheet.bedMaxX);
    checkRange(findings, Text::tr("Bed y"), sheet.bedMinY, sheet.bedMaxY);
    checkBedInTravel(findings, "x", sheet.bedMinX, sheet.bedMaxX, sheet.travelMinX, sheet.travelMaxX);
    checkBedInTravel(findings, "y", sheet.bedMinY, sheet.bedMaxY, sheet.travelMinY, sheet.travelMaxY);
  }
  if (sheet.nozzle && sheet.filament && *sheet.nozzle >= *sheet.filament) {
    findings.push_back(
        {"sheet-nozzle",
         Severity::fault,
         say(Text::tr("A nozzle bore of {0} mm is not narrower than the filament of {1} mm."),
             formatNumber(*sheet.nozzle), formatNumber(*sheet.filament)),
         {}});
  }
  const double heaters = sheet.hotEndPower.value_or(0) + sheet.bedPower.value_or(0);
  if (sheet.supplyPower && heaters > 0.8 * *sheet.supplyPower) {
    findings.push_back(
        {"sheet-supply",
         Severity::caution,
         say(Text::tr("The heaters take {0} W, more than 80 % of the supply's {1} W (common practice, "
                      "no source); a bed fed from the mains does not count here."),
             formatNumber(heaters), formatNumber(*sheet.supplyPower)),
         {}});
  }
  return findings;
}

std::vector<Finding> checkMotors(const MachineSheet& sheet) {
  std::vector<Finding> findings;
  const auto check = [&](const std::string& axis, const AxisDrive& drive) {
    if (!drive.motorCurrent || !drive.motorRated) {
      return;
    }
    if (drive.currentIs.empty()) {
      findings.push_back({"sheet-current-kind",
                          Severity::note,
                          say(Text::tr("Motor current {0}: say whether the {1} A are rms or peak."), axis,
                              formatNumber(*drive.motorCurrent)),
                          {}});
      return;
    }
    const double rms = *drive.motorCurrent / (drive.currentIs == "peak" ? std::numbers::sqrt2 : 1.0);
    if (rms > *drive.motorRated) {
      findings.push_back(
          {"sheet-current",
           Severity::caution,
           say(Text::tr(
                   "Motor current {0}: {1} A rms are more than the rated {2} A; the motor gets too hot."),
               axis, formatNumber(std::round(100 * rms) / 100), formatNumber(*drive.motorRated)),
           {}});
    }
  };
  check("x", sheet.x);
  check("y", sheet.y);
  check("z", sheet.z);
  return findings;
}

}  // namespace fettle
