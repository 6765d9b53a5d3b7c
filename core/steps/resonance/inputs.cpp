#include "core/steps/resonance/inputs.h"

#include "core/measure/text.h"

namespace fettle {

void VibrationCapture::describe(FieldList& fields) {
  const std::vector<Choice> sensors{
      {"ax", Text::tr("sensor x")}, {"ax_reversed", Text::tr("sensor x reversed")},
      {"ay", Text::tr("sensor y")}, {"ay_reversed", Text::tr("sensor y reversed")},
      {"az", Text::tr("sensor z")}, {"az_reversed", Text::tr("sensor z reversed")}};
  fields
      .choice(
          "axis", axis, Text::tr("Axis"),
          {{"x", "x"}, {"y", "y"}, {"p", Text::tr("belt diagonal p")}, {"q", Text::tr("belt diagonal q")}})
      .required()
      .help(Text::tr("The axis that was shaken; on crossed belts p and q compare the two belts."));
  fields.text("position", position, Text::tr("Position"))
      .required()
      .help(Text::tr("Where the tool head stood, in a word: centre, front left."))
      .alsoNamed({"place"});
  fields
      .choice(
          "direction", direction, Text::tr("Direction"),
          {{"x", "x"}, {"y", "y"}, {"p", Text::tr("belt diagonal p")}, {"q", Text::tr("belt diagonal q")}})
      .help(Text::tr("The way the head moved; blank: along the axis."));
  fields.choice("kind", kind, Text::tr("Kind"),
                {{"sweep", Text::tr("sweep")}, {"tap", Text::tr("tap")}, {"run", Text::tr("run")}});
  fields.text("load", load, Text::tr("Load"))
      .help(Text::tr("What the axis carried, such as a full spool or the heaviest piece."));
  fields
      .choice("excitation", excitation, Text::tr("Excitation"),
              {{"flat", Text::tr("flat")},
               {"constant-velocity", Text::tr("constant velocity")},
               {"tap", Text::tr("tap")},
               {"unknown", Text::tr("unknown")}})
      .help(Text::tr("Constant velocity: the acceleration grows with the frequency, as in most sweeps. "
                     "Blank: constant velocity for a sweep, tap for a tap, unknown for a run."));
  fields.number("sweep_from_hz", sweepFrom, Text::tr("Sweep from"), "Hz")
      .bounds(0, 5000)
      .requiredWhen("kind", {"sweep"})
      .onlyWhen("kind", {"sweep"});
  fields.number("sweep_to_hz", sweepTo, Text::tr("Sweep to"), "Hz")
      .bounds(1, 5000)
      .requiredWhen("kind", {"sweep"})
      .onlyWhen("kind", {"sweep"});
  fields.number("sweep_s", sweepTime, Text::tr("Sweep time"), "s")
      .bounds(0.1, 3600)
      .requiredWhen("kind", {"sweep"})
      .onlyWhen("kind", {"sweep"});
  fields.choice("sensor_x", sensorX, Text::tr("Along machine x"), sensors)
      .help(Text::tr("The sensor's axis that points along plus x of the machine."));
  fields.choice("sensor_y", sensorY, Text::tr("Along machine y"), sensors);
  fields.choice("sensor_z", sensorZ, Text::tr("Along machine z"), sensors);
  fields
      .capture("capture", capture, Text::tr("Capture"),
               [](FieldList& columns) {
                 columns.column("time_s", Text::tr("Time"), "s").required().alsoNamed({"time", "t"});
                 columns.column("ax", Text::tr("Acceleration x"), "mm/s2").alsoNamed({"x"});
                 columns.column("ay", Text::tr("Acceleration y"), "mm/s2").alsoNamed({"y"});
                 columns.column("az", Text::tr("Acceleration z"), "mm/s2").alsoNamed({"z"});
               })
      .required();
}

std::string VibrationCapture::excitedBy() const {
  if (!excitation.empty()) {
    return excitation;
  }
  return isSweep() ? "constant-velocity" : isTap() ? "tap" : "unknown";
}

void RippleRow::describe(FieldList& fields) {
  fields.choice("axis", axis, Text::tr("Axis"), {{"x", "x"}, {"y", "y"}}).required();
  fields.number("speed_mm_s", speed, Text::tr("Speed"), "mm/s")
      .bounds(1, 2000)
      .required()
      .alsoNamed({"speed"})
      .help(Text::tr("Speed along the wall on which the ripples stand."));
  fields.number("count", count, Text::tr("Intervals"), "1")
      .bounds(1, 1000)
      .whole()
      .required()
      .help(Text::tr("Whole intervals from the first crest to the last; not the number of crests."));
  fields.number("distance_mm", distance, Text::tr("Distance"), "mm")
      .bounds(0.1, 1000)
      .required()
      .readWith(instruments::caliper())
      .alsoNamed({"distance", "length"})
      .help(Text::tr("From the first crest counted to the last."));
  fields.text("amplitudes_mm", amplitudes, Text::tr("Amplitudes in mm"))
      .help(Text::tr("Crest after crest with blanks between them, 0.12 0.09 0.07; may stay blank."));
}

void ResonanceInputs::describe(FieldList& fields) {
  fields.table("captures", captures, Text::tr("Captures"))
      .help(Text::tr("One row for each recording: every axis at mid travel and where it moves most mass."));
  fields.table("ripples", ripples, Text::tr("Printed ripples"))
      .help(Text::tr("Ripples behind the corners of a print; they count where an axis has no capture."));
  fields.number("segment_s", segmentTime, Text::tr("Segment"), "s")
      .bounds(0.05, 60)
      .carriesOver()
      .help(Text::tr("Length of the pieces the density is averaged over; longer resolves finer."));
  fields.number("frequency_allowance", frequencyAllowance, Text::tr("Allowance, share of frequency"), "1")
      .bounds(0, 0.5)
      .carriesOver()
      .help(Text::tr("How far a mode may wander with load and position, as a share of its frequency."));
  fields.number("residual_limit", residualLimit, Text::tr("Vibration that may be left, share"), "1")
      .bounds(0.001, 0.9)
      .carriesOver()
      .help(Text::tr("Share of the unshaped vibration."));
  fields.number("path_deviation_mm", pathDeviation, Text::tr("Path deviation allowed"), "mm")
      .bounds(0.001, 5)
      .carriesOver()
      .help(Text::tr("How far shaping may round the path; it sets acceleration and corner speed."));
  fields.number("design_damping", designDamping, Text::tr("Design damping"), "1")
      .bounds(0, 0.5)
      .carriesOver()
      .help(Text::tr("Damping ratio where nothing was measured."));
}

}  // namespace fettle
