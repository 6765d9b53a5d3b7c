#include "core/steps/mechanics/inputs.h"

#include "core/measure/text.h"

namespace fettle {

std::vector<Choice> mechanicsItems() {
  return {
      {"transport_locks", Text::tr("Transport locks and ties are out")},
      {"parts_and_bolts", Text::tr("Parts are complete and bolts tight, against the list")},
      {"diagonals", Text::tr("Diagonals of every frame face are measured and alike")},
      {"gantry", Text::tr("Gantry is parallel, both z ends at equal height")},
      {"grub_screws", Text::tr("Grub screws sit on flats and are locked")},
      {"couplings", Text::tr("Couplings are tight and not bottomed")},
      {"rails", Text::tr("Rails are clean and greased")},
      {"wheels", Text::tr("Wheels have no play and still turn by finger, if there are any")},
      {"belt_path", Text::tr("Belt path is straight and rubs on no flange")},
      {"cables", Text::tr("Cables and chains are free at all extremes of travel")},
      {"crimps", Text::tr("Crimps and ferrules are sound, no tinned strand is under a screw")},
  };
}

void FaceDiagonals::describe(FieldList& columns) {
  columns.text("face", face, Text::tr("Face")).required().help(Text::tr("In a word: front, left, bottom."));
  columns.number("p_mm", p, Text::tr("One diagonal"), "mm")
      .bounds(50, 5000)
      .required()
      .readWith(instruments::steelRule());
  columns.number("q_mm", q, Text::tr("Other diagonal"), "mm")
      .bounds(50, 5000)
      .required()
      .readWith(instruments::steelRule());
  columns.number("length_mm", length, Text::tr("Edge"), "mm")
      .bounds(20, 5000)
      .required()
      .help(Text::tr("The face's longer edge; 1 mm per 500 mm of it is allowed."));
}

void DragReading::describe(FieldList& columns) {
  columns.choice("axis", axis, Text::tr("Axis"), {{"x", "x"}, {"y", "y"}, {"z", "z"}}).required();
  columns.text("position", position, Text::tr("Position"))
      .required()
      .help(Text::tr("Where along its travel, in a word or in mm; five places."))
      .alsoNamed({"place"});
  columns.number("force_N", force, Text::tr("Force"), "N")
      .bounds(0, 500)
      .required()
      .readWith({Text::tr("pull scale"), 0.1, 0.2, 0, "N"})  // common practice, no source
      .help(Text::tr("That just keeps the unpowered axis moving slowly."))
      .alsoNamed({"force"});
}

void MechanicsInputs::describe(FieldList& fields) {
  fields.checklist("checks", checks, Text::tr("Checks"), mechanicsItems())
      .help(Text::tr("Power off and unplugged. What the machine does not have is in order."));
  fields.table("diagonals", diagonals, Text::tr("Diagonals"))
      .help(Text::tr("Of each face of the frame, corner to corner."));
  fields.table("drag", drag, Text::tr("Drag"))
      .help(Text::tr("Motors without power: the force on a pull scale at five places of each axis."));
}

Json dragPlaces() {
  const std::vector<std::string> places{Text::tr("lower end"), Text::tr("a quarter"), Text::tr("middle"),
                                        Text::tr("three quarters"), Text::tr("upper end")};
  Json rows = Json::array();
  for (const char* axis : {"x", "y", "z"}) {
    for (const auto& place : places) {
      rows.push_back({{"axis", axis}, {"position", place}});
    }
  }
  return rows;
}

}  // namespace fettle
