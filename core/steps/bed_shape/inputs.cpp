#include "core/steps/bed_shape/inputs.h"

#include "core/measure/text.h"

namespace fettle {

void HeightPoint::describe(FieldList& columns) {
  columns.number("x", x, "x", "mm")
      .bounds(-farthestPlace, farthestPlace)
      .required()
      .help(Text::tr("Where the probe tip touched."));
  columns.number("y", y, "y", "mm")
      .bounds(-farthestPlace, farthestPlace)
      .required()
      .help(Text::tr("Where the probe tip touched."));
  columns.number("z", z, Text::tr("Height"), "mm")
      .bounds(-1000, 1000)
      .required()
      .help(Text::tr("Surface there; plus is up."))
      .readWith(instruments::probeHeight())
      .alsoNamed({"height", "z"});
}

void BedShapeInputs::describe(FieldList& fields) {
  fields.grid("grid", grid, Text::tr("Grid of heights"), "mm")
      .bounds(-1000, 1000)
      .help(Text::tr("Heights as probed, one row for each y; plus is up."));
  fields.table("points", points, Text::tr("Points"))
      .help(Text::tr("Instead of a grid: three points or more, anywhere on the bed."))
      .inGroup(Text::tr("Points instead of a grid"), true);
  fields.oneOf({"grid", "points"});
  fields.number("bed_C", bedTemperature, Text::tr("Bed temperature"), "C")
      .bounds(-20, 300)
      .carriesOver()
      .help(Text::tr("While probing; best that of printing."));
  fields.number("soak_minutes", soakMinutes, Text::tr("Soaked"), "min")
      .bounds(0, 1440)
      .help(Text::tr("Time at this temperature before probing: 15 min, thick plates 30."));
}

}  // namespace fettle
