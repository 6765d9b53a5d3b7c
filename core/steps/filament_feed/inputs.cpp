#include "core/steps/filament_feed/inputs.h"

#include "core/measure/text.h"

namespace fettle {

void Draw::describe(FieldList& columns) {
  columns.number("commanded_mm", commanded, Text::tr("Commanded"), "mm")
      .bounds(1, 2000)
      .required()
      .help(Text::tr("Length of filament commanded."))
      .alsoNamed({"commanded"});
  columns.number("before_mm", before, Text::tr("Mark before"), "mm")
      .bounds(0, 3000)
      .required()
      .readWith(instruments::steelRule())
      .help(Text::tr("From the feeder's inlet to the mark on the filament, before."))
      .alsoNamed({"before"});
  columns.number("after_mm", after, Text::tr("Mark after"), "mm")
      .bounds(0, 3000)
      .required()
      .readWith(instruments::steelRule())
      .help(Text::tr("From the inlet to the same mark, after."))
      .alsoNamed({"after"});
  columns.number("speed_mm_s", speed, Text::tr("Speed"), "mm/s")
      .bounds(0.01, 500)
      .help(Text::tr("Of the filament; two speeds or more show slip."))
      .alsoNamed({"speed"});
}

void DiameterPlace::describe(FieldList& columns) {
  columns.number("first_mm", first, Text::tr("Diameter"), "mm")
      .bounds(0.5, 10)
      .required()
      .readWith(instruments::caliperZeroed())
      .help(Text::tr("In any direction."))
      .alsoNamed({"diameter", "d1"});
  columns.number("second_mm", second, Text::tr("Diameter across"), "mm")
      .bounds(0.5, 10)
      .required()
      .readWith(instruments::caliperZeroed())
      .help(Text::tr("At the same place, a quarter turn further."))
      .alsoNamed({"diameter across", "d2"});
}

void FilamentFeedInputs::describe(FieldList& fields) {
  fields.table("draws", draws, Text::tr("Draws"))
      .required()
      .help(Text::tr("Two speeds or more, three draws of each; 100 mm or more each time."));
  fields.table("filament_diameters", diameters, Text::tr("Filament diameters"))
      .help(Text::tr("Five places along a few metres, each in two directions."));
  const std::string drying = Text::tr("Lot and drying");
  fields.text("lot", lot, Text::tr("Lot"))
      .inGroup(drying, true)
      .carriesOver()
      .help(Text::tr("Of the filament, as printed on the spool."));
  fields.number("drying_C", dryingTemperature, Text::tr("Dried at"), "C")
      .bounds(20, 150)
      .inGroup(drying, true);
  fields.number("drying_h", dryingTime, Text::tr("Dried for"), "h").bounds(0, 200).inGroup(drying, true);
  fields.number("mass_before_g", massBefore, Text::tr("Mass before drying"), "g")
      .bounds(0.1, 20000)
      .inGroup(drying, true)
      .readWith(instruments::pocketScale())
      .help(Text::tr("Of spool and filament, or of a piece of filament alone."));
  fields.number("mass_after_g", massAfter, Text::tr("Mass after drying"), "g")
      .bounds(0.1, 20000)
      .inGroup(drying, true)
      .readWith(instruments::pocketScale());
}

}  // namespace fettle
