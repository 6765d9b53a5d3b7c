#include "core/steps/belt_tension/inputs.h"

#include "core/measure/text.h"

namespace fettle {

void Pluck::describe(FieldList& columns) {
  columns.text("belt", belt, Text::tr("Belt"))
      .required()
      .help(Text::tr("In a word: x, y, left, right."))
      .alsoNamed({"axis"});
  columns.number("frequency_hz", frequency, Text::tr("Frequency"), "Hz")
      .bounds(5, 2000)
      .required()
      .readWith({Text::tr("frequency reading"), 0.1, 0.5, 0, "Hz"})  // common practice, no source
      .help(Text::tr("Of the plucked span, by ear and tuner or any other means."))
      .alsoNamed({"frequency"});
  columns.number("length_mm", length, Text::tr("Span"), "mm")
      .bounds(20, 3000)
      .readWith(instruments::steelRule())
      .help(Text::tr("Between the tangent points; blank: the one span for all."))
      .alsoNamed({"length", "span"});
}

void BeltRecording::describe(FieldList& columns) {
  columns.text("belt", belt, Text::tr("Belt")).required().help(Text::tr("In a word: x, y, left, right."));
  columns.number("length_mm", length, Text::tr("Span"), "mm")
      .bounds(20, 3000)
      .readWith(instruments::steelRule())
      .help(Text::tr("Between the tangent points; blank: the one span for all."));
  columns
      .capture("sound", sound, Text::tr("Sound"),
               [](FieldList& file) {
                 file.column("time_s", Text::tr("Time"), "s").required().alsoNamed({"time", "t"});
                 file.column("level", Text::tr("Level"), "1").required().alsoNamed({"sound", "amplitude"});
               })
      .required()
      .help(Text::tr("A WAVE file, or a text of time and level: a few plucks, a second apart, in a quiet "
                     "room."));
}

void BeltTensionInputs::describe(FieldList& fields) {
  fields.number("length_mm", length, Text::tr("Span"), "mm")
      .bounds(20, 3000)
      .carriesOver()
      .readWith(instruments::steelRule())
      .help(
          Text::tr("Free length between the tangent points, 150 to 400 mm; of all belts that have none of "
                   "their own."));
  fields.number("mass_g_per_m", mass, Text::tr("Belt mass"), "g/m")
      .bounds(0.1, 1000)
      .carriesOver()
      .readWith({Text::tr("belt mass as typed"), 0, 0, 0.05, "g/m"})  // common practice, no source
      .help(Text::tr("Of one metre at its full width. Weigh a known length of the same belt."));
  fields.table("plucks", plucks, Text::tr("Plucks"))
      .help(Text::tr("Frequencies read by other means; three or more of each belt."));
  fields.table("recordings", recordings, Text::tr("Recordings"))
      .help(Text::tr("Sound of a plucked belt; the step finds its frequency."));
  fields.number("target_N", target, Text::tr("Target"), "N")
      .bounds(0.1, 2000)
      .carriesOver()
      .help(Text::tr("Tension the belt's or machine's maker asks for; blank: none is judged."));
  fields.number("target_within", targetWithin, Text::tr("Allowed either side, share of target"), "1")
      .bounds(0.001, 1)
      .help(Text::tr("Share of the target."));
  fields.number("search_from_hz", searchFrom, Text::tr("Search from"), "Hz")
      .bounds(5, 2000)
      .inGroup(Text::tr("Search in recordings"), true)
      .help(Text::tr("The fundamental in recordings is looked for from here."));
  fields.number("search_to_hz", searchTo, Text::tr("Search to"), "Hz")
      .bounds(10, 4000)
      .inGroup(Text::tr("Search in recordings"), true);
  fields.oneOf({"plucks", "recordings"});
}

}  // namespace fettle
