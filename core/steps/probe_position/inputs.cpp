#include "core/steps/probe_position/inputs.h"

#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr double fewestProbingLines = 2,
                 mostProbingLines = 100;  // a bound against slips; common practice, no source

}  // namespace

void TouchMark::describe(FieldList& columns) {
  const auto coordinate = [&](const char* key, std::optional<double>& member, const std::string& label,
                              const std::string& help, const std::vector<std::string>& words) {
    columns.number(key, member, label, "mm")
        .bounds(-5000, 5000)
        .required()
        .help(help)
        .readWith(instruments::alignmentByEye())
        .alsoNamed(words);
  };
  const std::string nozzle = Text::tr("Carriage coordinate with the nozzle over the mark.");
  const std::string probe = Text::tr("Carriage coordinate with the probe tip over the same mark.");
  coordinate("nozzle_x", nozzleX, Text::tr("Nozzle x"), nozzle, {"nozzle x"});
  coordinate("nozzle_y", nozzleY, Text::tr("Nozzle y"), nozzle, {"nozzle y"});
  coordinate("probe_x", probeX, Text::tr("Probe x"), probe, {"probe x"});
  coordinate("probe_y", probeY, Text::tr("Probe y"), probe, {"probe y"});
}

void DirectOffset::describe(FieldList& columns) {
  columns.number("offset_x", x, Text::tr("Offset x"), "mm")
      .bounds(-500, 500)
      .required()
      .help(Text::tr("Probe tip from the nozzle; plus when the tip is at larger x."))
      .readWith(instruments::steelRule());
  columns.number("offset_y", y, Text::tr("Offset y"), "mm")
      .bounds(-500, 500)
      .required()
      .help(Text::tr("Probe tip from the nozzle; plus when the tip is at larger y."))
      .readWith(instruments::steelRule());
}

void ProbePositionInputs::describe(FieldList& fields) {
  fields.table("marks", marks, Text::tr("Marks"))
      .help(Text::tr("Three marks or more, well apart: the same mark once under the nozzle, once under the "
                     "probe tip."));
  fields.table("direct", direct, Text::tr("Offset measured directly"))
      .help(Text::tr("Instead of marks: the probe tip measured from the nozzle."))
      .inGroup(Text::tr("Offset measured directly"), true);
  fields.oneOf({"marks", "direct"});
  fields.number("margin", margin, Text::tr("Margin"), "mm")
      .bounds(0, 100)
      .carriesOver()
      .help(Text::tr("Strip along the edge of the bed where no touch is wanted."));
  const std::string group = Text::tr("Probing grid");
  const auto limit = [&](const char* key, std::optional<double>& member, const std::string& label) {
    fields.number(key, member, label, "mm")
        .bounds(-5000, 5000)
        .inGroup(group, true)
        .blankFrom(Origin::Place::ledger, key)
        .help(Text::tr("Where the probe tip is meant to land; blank: as the controller has it."));
  };
  const auto count = [&](const char* key, std::optional<double>& member, const std::string& label,
                         const std::string& help) {
    fields.number(key, member, label, "1")
        .bounds(fewestProbingLines, mostProbingLines)
        .whole()
        .inGroup(group, true)
        .blankFrom(Origin::Place::ledger, key)
        .help(help);
  };
  limit("probing_min_x", probingMinX, Text::tr("Probing grid from x"));
  limit("probing_max_x", probingMaxX, Text::tr("Probing grid to x"));
  limit("probing_min_y", probingMinY, Text::tr("Probing grid from y"));
  limit("probing_max_y", probingMaxY, Text::tr("Probing grid to y"));
  count("probing_columns", probingColumns, Text::tr("Probing columns"),
        Text::tr("Points along x; blank: as the controller has it."));
  count("probing_rows", probingRows, Text::tr("Probing rows"),
        Text::tr("Points along y; blank: as the controller has it."));
}

}  // namespace fettle
