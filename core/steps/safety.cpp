#include "core/steps/safety.h"

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/heaters.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/contract/result_name.h"
#include "core/steps/safety/checks.h"
#include "core/steps/safety/circuits.h"
#include "core/steps/safety/heaters.h"

namespace fettle {
namespace {

constexpr double earthLimit = 0.1;  // IEC 61010-1, from memory
constexpr const char* earthResistance = "<part>.earth_ohm";

Tolerance earthTolerance(const StepContext& context, const std::string& id) {
  return context.changedTolerance("safety." + id).value_or(Tolerance{std::nullopt, earthLimit});
}

/// What one earth reading says against the bond; empty when it passes.
std::string earthDoubt(StepResult& result, const std::string& part, const Quantity& ohm,
                       const Tolerance& limit, const Instrument& tester) {
  const std::string allowed = formatNumber(limit.high.value_or(earthLimit));
  const Judgement judgement = judge(ohm, limit);
  if (judgement.verdict == Verdict::fail) {
    result.addFinding(
        "earth-high", Severity::fault,
        say(Text::tr("{0}: {1} to earth, {2} Ω allowed. A fault to this part would not blow the "
                     "fuse; the part would be live. A qualified person mends it before power-up."),
            part, formatQuantity(ohm), allowed));
    return say(Text::tr("earth bond: {0} reads {1}"), part, formatQuantity(ohm));
  }
  if (judgement.verdict == Verdict::undecided) {
    const Instrument better = instruments::lowOhmTester();
    const bool coarse = tester.standardUncertainty(ohm.value) > better.standardUncertainty(ohm.value);
    result.addFinding(
        "earth-undecided", Severity::caution,
        say(Text::tr("{0}: {1} to earth is too near to the limit of {2} Ω for this instrument. {3}"), part,
            formatQuantity(ohm), allowed,
            coarse ? Text::tr("A four-wire low-ohm tester with its leads subtracted would decide.")
                   : Text::tr("Clean and tighten the bond, and read again.")));
    return say(Text::tr("earth bond: {0} not decided"), part);
  }
  return {};
}

Quantity earthReading(double ohm, const StepContext& context) {
  const double reading[] = {ohm};
  return meanOfReadings(reading, context.instrument("earth.ohm"), "ohm");
}

std::vector<std::string> judgeEarth(StepResult& result, const SafetyInputs& inputs,
                                    const StepContext& context) {
  std::vector<std::string> doubts;
  DistinctNames names;
  for (const auto& row : included(inputs.earth)) {
    if (row.part.empty() || !row.ohm) {
      result.missing.push_back("earth[" + std::to_string(row.number) + "]." +
                               (row.part.empty() ? "part" : "ohm"));
      continue;
    }
    const Quantity ohm = earthReading(*row.ohm, context);
    const std::string id = names.next(row.part) + ".earth_ohm";
    result.give(id, ohm);
    const Tolerance limit = earthTolerance(context, id);
    if (auto doubt = earthDoubt(result, row.part, ohm, limit, context.instrument("earth.ohm"));
        !doubt.empty()) {
      doubts.push_back(std::move(doubt));
    }
  }
  return doubts;
}

std::vector<Circuit> namedCircuits(StepResult& result, const std::vector<Circuit>& circuits) {
  std::vector<Circuit> named;
  for (const auto& row : included(circuits)) {
    if (row.name.empty()) {
      result.missing.push_back("circuits[" + std::to_string(row.number) + "].name");
    } else {
      named.push_back(row);
    }
  }
  return named;
}

void closeGate(StepResult& result, const std::vector<std::string>& critical) {
  if (critical.empty()) {
    return;
  }
  std::string list;
  for (const auto& words : critical) {
    list += (list.empty() ? "" : "; ") + words;
  }
  result.addFinding("critical-open", Severity::fault, say(Text::tr("Do not power up: {0}."), list));
}

Chart earthChart(const SafetyInputs& inputs, const Tolerance& allowed, const StepContext& context) {
  Chart chart;
  chart.view = "earth";
  chart.title = Text::tr("Earth bond");
  chart.x = countedAxis(Text::tr("part"));
  chart.y = {Text::tr("resistance to earth"), "ohm"};
  chart.whenEmpty = Text::tr("Enter the resistance from the earth pin to each touchable metal part.");
  Series points, excluded;
  points.name = Text::tr("parts");
  excluded.name = Text::tr("excluded");
  excluded.role = SeriesRole::excluded;
  std::vector<double> expanded;
  for (const auto& row : inputs.earth) {
    chart.x.nameThing(row.number, row.part);
    if (row.ohm) {
      Series& series = row.excluded ? excluded : points;
      series.x.push_back(static_cast<double>(row.number));
      series.y.push_back(*row.ohm);
      if (!row.excluded) {
        expanded.push_back(expandedUncertainty(earthReading(*row.ohm, context)).value_or(0));
      }
    }
  }
  if (points.x.empty()) {
    return chart;
  }
  addWithUncertainty(chart, std::move(points), expanded);
  if (!excluded.x.empty()) {
    chart.series.push_back(std::move(excluded));
  }
  if (allowed.high) {
    chart.lines.push_back(
        {say(Text::tr("limit {0} Ω"), formatNumber(*allowed.high)), *allowed.high, false});
  }
  return chart;
}

}  // namespace

void EarthReading::describe(FieldList& columns) {
  columns.text("part", part, Text::tr("Part"))
      .help(Text::tr("A touchable metal part: frame, bed plate, supply case."))
      .alsoNamed({"part", "place"});
  columns.number("ohm", ohm, Text::tr("Resistance to earth"), "ohm")
      .bounds(-0.1, 1e9)
      .help(Text::tr("From the inlet's earth pin, unplugged, leads subtracted."))
      .readWith(instruments::lowOhmTester())
      .alsoNamed({"resistance"});
}

void HeaterReading::describe(FieldList& columns) {
  columns.choice("heater", heater, Text::tr("Heater"), heaterChoices());
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
      .help(Text::tr("At the heater; blank: the supply voltage of the machine sheet."))
      .readWith(instruments::multimeter());
  columns.number("rated_W", rated, Text::tr("Rated power"), "W")
      .bounds(0.1, 10000)
      .help(Text::tr("As marked on the heater, at its own voltage; blank: that of the machine sheet."));
  columns.number("working_C", working, Text::tr("Working temperature"), "C")
      .bounds(0, 600)
      .help(Text::tr("At which the rated power counts; a copper trace gains resistance up to there."))
      .onlyWhen("kind", {"copper-trace"});
  columns.choice("fed_from", fedFrom, Text::tr("Fed from"),
                 {{"supply", Text::tr("the supply")}, {"mains", Text::tr("the mains")}});
}

void Circuit::describe(FieldList& columns) {
  columns.text("name", name, Text::tr("Circuit"));
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
      .help(Text::tr("Motors, fans, boards, lamps, at their most."));
  fields.table("circuits", circuits, Text::tr("Circuits"))
      .help(Text::tr("One row for each fuse: what it protects."));
}

StepResult evaluate(const SafetyInputs& inputs, const StepContext& context) {
  StepResult result;
  const bool begun = !inputs.checks.empty() || !inputs.earth.empty() || !inputs.heaters.empty() ||
                     !inputs.circuits.empty();
  if (!begun) {
    result.missing.push_back("checks");
  } else {
    auto critical = judgeChecks(result, inputs.checks);
    const auto append = [&](std::vector<std::string> more) {
      critical.insert(critical.end(), more.begin(), more.end());
    };
    append(judgeEarth(result, inputs, context));
    judgeHeaters(result, inputs, context);
    if (!included(inputs.earth).empty() || !included(inputs.heaters).empty()) {
      noteSingleReading(result, Text::tr("Each resistance"));
    }
    append(judgeCircuits(result, namedCircuits(result, inputs.circuits)));
    result.give("critical_open", static_cast<double>(critical.size()), "1");
    closeGate(result, critical);
    result.addFinding(
        "mains-work", Severity::note,
        Text::tr("Work on mains wiring is for a qualified person; local codes come before anything "
                 "said here."));
  }
  result.charts = {earthChart(inputs, earthTolerance(context, earthResistance), context),
                   circuitsChart(included(inputs.circuits))};
  return result;
}

Step safetyStep() {
  const Tolerance none{std::nullopt, 0.0};
  const Tolerance atLeastZero{0.0, std::nullopt};
  Step step;
  step.key = "safety";
  step.name = Text::tr("Safety and wiring");
  step.purpose = Text::tr("Whether the machine may be switched on.");
  step.stage = Stage::makeSafe;
  step.caution = Text::tr(
      "Unplug the machine and wait a minute before you open it. Work on mains wiring is for a qualified "
      "person under local codes.");
  step.results = {
      {"critical_open", "1", Text::tr("Critical items open"), none, true},
      {"open_items", "1", Text::tr("Items open"), none, true},
      {"open_list", "", Text::tr("Open")},
      {earthResistance, "ohm", Text::tr("Resistance to earth"), {std::nullopt, earthLimit}, true},
      {"<heater>.power_W", "W", Text::tr("Power, cold"), {}, true},
      {"<heater>.working_power_W", "W", Text::tr("Power at working temperature")},
      {"<heater>.current_A", "A", Text::tr("Current, cold")},
      {"<heater>.power_ratio", "1", Text::tr("Power / rated")},
      {"supply_load_W", "W", Text::tr("Load of the supply")},
      {"supply_load", "1", Text::tr("Load / supply"), {std::nullopt, 0.8}, true},
      {"<circuit>.wire_limit_A", "A", Text::tr("Wire carries")},
      {"<circuit>.fuse_margin_A", "A", Text::tr("Wire less fuse"), atLeastZero, true},
      {"<circuit>.load_margin_A", "A", Text::tr("Fuse less load"), atLeastZero, true},
  };
  step.emptyCharts = {earthChart({}, {}, {}), circuitsChart({})};
  return withInputs<SafetyInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
