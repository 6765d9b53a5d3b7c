#include "core/steps/heater_control/inputs.h"

#include "core/measure/text.h"

namespace fettle {

void HeaterControlInputs::describe(FieldList& fields) {
  describeHeater(fields);
  fields
      .choice("mode", mode, Text::tr("Test"),
              {{"step", Text::tr("Step of duty")},
               {"relay", Text::tr("Relay")},
               {"hold", Text::tr("Approach and hold")}})
      .required();
  fields
      .capture("log", log, Text::tr("Log"),
               [](FieldList& columns) {
                 columns.column("time_s", Text::tr("Time"), "s").required();
                 columns.column("temp_C", Text::tr("Temperature"), "C").required();
                 columns.column("duty", Text::tr("Duty"), "1");
                 columns.column("target_C", Text::tr("Target"), "C");
               })
      .requiredWhen("mode", {"hold"})
      .help(Text::tr("Of the machine: time and temperature, with duty and target where it gives them."));
  describeTests(fields);
  describeControl(fields);
  describeTyped(fields);
}

void HeaterControlInputs::describeTests(FieldList& fields) {
  fields.number("max_C", maximum, Text::tr("Highest temperature allowed"), "C")
      .bounds(30, 700)
      .help(Text::tr("Blank: the machine sheet's for hot end and bed."));
  fields.number("step_at_s", stepAt, Text::tr("Duty changes at"), "s")
      .bounds(0, 1e6)
      .onlyWhen("mode", {"step"})
      .help(Text::tr("Counted from the first row; needed when the log has no duty, like the next two."));
  fields.number("duty_before", dutyBefore, Text::tr("Duty before the step"), "1")
      .bounds(0, 1)
      .onlyWhen("mode", {"step"});
  fields.number("duty_after", dutyAfter, Text::tr("Duty after the step"), "1")
      .bounds(0, 1)
      .onlyWhen("mode", {"step"});
  fields.number("hysteresis_C", hysteresis, Text::tr("Half hysteresis"), "C")
      .bounds(0, 50)
      .onlyWhen("mode", {"relay"})
      .help(Text::tr("The relay switches at target plus and minus this."));
  fields.number("duty_low", dutyLow, Text::tr("Low duty of the relay"), "1")
      .bounds(0, 1)
      .onlyWhen("mode", {"relay"})
      .help(Text::tr("Needed when the log has no duty, like the high one."));
  fields.number("duty_high", dutyHigh, Text::tr("High duty of the relay"), "1")
      .bounds(0, 1)
      .onlyWhen("mode", {"relay"});
}

void HeaterControlInputs::describeControl(FieldList& fields) {
  fields.number("target_C", target, Text::tr("Target"), "C")
      .bounds(20, 700)
      .help(Text::tr("To heat up to in the simulation, and of the log when it has no target itself."));
  fields.number("room_C", room, Text::tr("Room"), "C").bounds(-20, 80);
  const std::string controller = Text::tr("Controller");
  fields.number("tau_c_s", closedLoopTime, Text::tr("Time constant wanted of the closed loop"), "s")
      .bounds(0.01, 1e5)
      .onlyWhen("mode", {"step"})
      .inGroup(controller)
      .help(Text::tr("For SIMC; blank: the dead time. Longer is calmer."));
  fields.number("output_full_scale", outputFullScale, Text::tr("Controller output at full duty"), "1")
      .bounds(1e-3, 1e6)
      .onlyWhen("mode", {"step", "relay"})
      .inGroup(controller)
      .carriesOver()
      .help(Text::tr("255 or 100, say, when the controller's gains count in such steps."));
  fields.number("period_s", period, Text::tr("Control period"), "s")
      .bounds(0.001, 60)
      .onlyWhen("mode", {"step", "relay"})
      .inGroup(controller)
      .carriesOver()
      .help(Text::tr("Time between two samples of the controller, when its gains count per sample."));
  fields.number("fan_duty", fanDuty, Text::tr("Duty the fan takes"), "1")
      .bounds(0, 1)
      .onlyWhen("mode", {"step", "relay"})
      .inGroup(controller);
  fields.number("rise_window_s", riseWindow, Text::tr("Window of the runaway guard"), "s")
      .bounds(1, 3600)
      .inGroup(controller)
      .help(Text::tr("Blank: 15 s for the hot end, 90 s for the bed, 300 s for a chamber."));
}

void HeaterControlInputs::describeTyped(FieldList& fields) {
  const std::string known = Text::tr("Known before");
  fields.number("gain_C", gain, Text::tr("Gain, known before"), "C")
      .bounds(1, 1e5)
      .onlyWhen("mode", {"step"})
      .inGroup(known)
      .help(Text::tr("Without a log: °C at full duty above the room."));
  fields.number("tau_s", timeConstant, Text::tr("Time constant, known before"), "s")
      .bounds(0.1, 1e5)
      .onlyWhen("mode", {"step"})
      .inGroup(known);
  fields.number("theta_s", deadTime, Text::tr("Dead time, known before"), "s")
      .bounds(0, 1e4)
      .onlyWhen("mode", {"step"})
      .inGroup(known);
  fields.number("Ku", ultimateGain, Text::tr("Ultimate gain, known before"), "1/C")
      .bounds(1e-6, 1e4)
      .onlyWhen("mode", {"relay"})
      .inGroup(known)
      .help(Text::tr("Without a log: duty, 0 to 1, per °C."));
  fields.number("Pu", ultimatePeriod, Text::tr("Ultimate period, known before"), "s")
      .bounds(0.01, 1e5)
      .onlyWhen("mode", {"relay"})
      .inGroup(known);
}

}  // namespace fettle
