#include "core/steps/safety/inputs.h"

#include "core/measure/text.h"
#include "core/steps/contract/heaters.h"

namespace fettle {

std::vector<Choice> safetyItems() {
  return {
      {"mains_lead", Text::tr("mains lead and inlet whole, no strand bare")},
      {"earth_bond", Text::tr("earth bond on every touchable metal part")},
      {"strain_relief", Text::tr("strain relief on every moving and every mains lead")},
      {"fuses", Text::tr("fuses present, of the right rating")},
      {"heater_clamped", Text::tr("heater and sensor clamped, leads relieved")},
      {"guards", Text::tr("guards and covers fitted")},
      {"emergency_stop", Text::tr("emergency stop in reach and working")},
      {"smoke_alarm", Text::tr("smoke alarm in the room, tested")},
      {"ventilation", Text::tr("ventilation on")},
      {"attended", Text::tr("nobody leaves the first heat")},
  };
}

void EarthReading::describe(FieldList& columns) {
  columns.text("part", part, Text::tr("Part"))
      .required()
      .help(Text::tr("A touchable metal part: frame, bed plate, supply case."))
      .alsoNamed({"part", "place"});
  columns.number("ohm", ohm, Text::tr("Resistance to earth"), "ohm")
      .bounds(-0.1, 1e9)
      .required()
      .help(Text::tr("From the inlet's earth pin, unplugged, leads subtracted."))
      .readWith(instruments::lowOhmTester())
      .alsoNamed({"resistance"});
}

void HeaterReading::describe(FieldList& columns) {
  columns.choice("heater", heater, Text::tr("Heater"), heaterChoices()).required();
  columns.choice("kind", kind, Text::tr("Kind"),
                 {{"cartridge", Text::tr("cartridge")},
                  {"foil", Text::tr("foil")},
                  {"copper-trace", Text::tr("copper trace")},
                  {"ptc", Text::tr("ptc")}});
  columns.number("ohm", ohm, Text::tr("Resistance"), "ohm")
      .bounds(0.01, 1e6)
      .help(Text::tr("Cold, unplugged, one lead off its terminal, read with a multimeter."))
      .readWith(instruments::multimeterOhms());
  columns.number("volt", volt, Text::tr("Voltage"), "V")
      .bounds(1, 500)
      .blankFrom(Origin::Place::sheet, "supply_V")
      .help(Text::tr("At the heater; blank: the supply voltage of the machine sheet."))
      .readWith(instruments::multimeter());
  columns.number("rated_W", rated, Text::tr("Rated power"), "W")
      .bounds(0.1, 10000)
      .help(Text::tr("As marked on the heater, at its own voltage; blank: that of the machine sheet."));
  columns.number("working_C", working, Text::tr("Working temperature"), "C")
      .bounds(0, 600)
      .help(Text::tr("At which the rated power counts; a copper trace gains resistance up to there."))
      .onlyWhen("kind", {"copper-trace"})
      .folded();
  columns
      .choice("fed_from", fedFrom, Text::tr("Fed from"),
              {{"supply", Text::tr("the supply")}, {"mains", Text::tr("the mains")}})
      .folded();
}

void Circuit::describe(FieldList& columns) {
  columns.text("name", name, Text::tr("Circuit")).required();
  columns.number("fuse_A", fuse, Text::tr("Fuse"), "A").bounds(0.01, 200);
  columns.number("wire_mm2", wire, Text::tr("Wire"), "mm2")
      .bounds(0.01, 100)
      .help(Text::tr("Cross-section of the copper of the thinnest wire behind this fuse."));
  columns.number("load_A", load, Text::tr("Load"), "A")
      .bounds(0, 500)
      .help(Text::tr("The most that flows for more than a moment."));
}

void SafetyInputs::describe(FieldList& fields) {
  fields.checklist("checks", checks, Text::tr("Checklist"), safetyItems())
      .help(Text::tr("Unplugged. Each item with initials and time."));
  fields.table("earth", earth, Text::tr("Earth bond"))
      .help(Text::tr("Unplugged: from the inlet's earth pin to each touchable metal part."));
  fields.table("heaters", heaters, Text::tr("Heaters"))
      .help(Text::tr("Unplugged and cold: one row a heater."));
  fields.number("room_C", room, Text::tr("Room"), "C")
      .bounds(-20, 80)
      .help(Text::tr("Temperature of the heaters while they were measured."));
  fields.number("other_W", other, Text::tr("Everything else on the supply"), "W")
      .bounds(0, 10000)
      .carriesOver()
      .help(Text::tr("Motors, fans, boards, lamps, at their most."));
  fields.table("circuits", circuits, Text::tr("Circuits"))
      .help(Text::tr("One row for each fuse: what it protects."));
}

}  // namespace fettle
