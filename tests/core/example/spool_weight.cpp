#include "tests/core/example/spool_weight.h"

#include <algorithm>
#include <map>
#include <numbers>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/result_name.h"
#include "tests/core/example/spool_weight/results.h"

namespace fettle {
namespace {

constexpr double greatestSpread = 10;  // g; common practice, no source
constexpr double densityOfPla = 1.24;  // g/cm³; data sheets, from memory
constexpr double densityOfPetg = 1.27;

struct Spool {
  std::string name;
  std::vector<double> masses;
  std::string firstRow;  ///< path, for findings
};

std::vector<Spool> spoolsOf(const std::vector<WeighingRow>& weighings) {
  std::map<std::string, Spool> spools;
  for (const auto& row : included(weighings)) {
    Spool& spool = spools[row.spool];
    spool.name = row.spool;
    spool.masses.push_back(*row.mass);  // required, so every row that is here has one
    if (spool.firstRow.empty()) {
      spool.firstRow = fmt::format("weighings[{}]", row.number);
    }
  }
  std::vector<Spool> all;
  for (auto& [name, spool] : spools) {
    all.push_back(std::move(spool));
  }
  return all;
}

Quantity massOf(const Spool& spool, const StepContext& context) {
  const auto [least, most] = std::minmax_element(spool.masses.begin(), spool.masses.end());
  if (*most - *least > greatestSpread) {
    throw Refusal{
        say(Text::tr("{0}: weighings of {1} g and {2} g do not belong to one spool; at most {3} g "
                     "apart are accepted."),
            spool.name, formatNumber(*least), formatNumber(*most), formatNumber(greatestSpread)),
        spool.firstRow};
  }
  return meanOfReadings(spool.masses, context.instrument("mass_g"), "g");
}

Quantity lengthOf(const Quantity& mass, const std::string& material, double diameter) {
  const double density = material == "petg" ? densityOfPetg : densityOfPla;
  const double metresPerGram = 1e3 / density / (std::numbers::pi * diameter * diameter / 4) / 1e3;
  const Contribution parts[] = {{mass.u.value_or(0) * metresPerGram, mass.dof}};
  return combinedQuantity(mass.value * metresPerGram, "m", parts);
}

Chart massChart(const std::vector<Spool>& spools) {
  Chart chart;
  chart.view = "masses";
  chart.title = Text::tr("Weighings");
  chart.x = countedAxis(Text::tr("spool"));
  chart.y = {Text::tr("mass"), "g"};
  chart.whenEmpty = Text::tr("Enter the mass of each spool.");
  Series series;
  series.name = Text::tr("weighing");
  for (std::size_t i = 0; i < spools.size(); ++i) {
    chart.x.nameThing(i + 1, spools[i].name);
    for (const double mass : spools[i].masses) {
      series.x.push_back(static_cast<double>(i + 1));
      series.y.push_back(mass);
    }
  }
  chart.series.push_back(std::move(series));
  return chart;
}

}  // namespace

void WeighingRow::describe(FieldList& columns) {
  columns.text("spool", spool, Text::tr("Spool")).required();
  columns.number("mass_g", mass, Text::tr("Mass"), "g")
      .bounds(0, 10000)
      .required()
      .readWith(instruments::pocketScale());
}

void SpoolWeightInputs::describe(FieldList& fields) {
  fields.choice("material", material, Text::tr("Material"), {{"pla", "PLA"}, {"petg", "PETG"}});
  fields.table("weighings", weighings, Text::tr("Weighings")).required();
  fields.number("empty_g", emptyMass, Text::tr("Empty spool"), "g").bounds(0, 2000).carriesOver();
}

void SpoolWeightResults::describe(ResultList& results) {
  results.quantity("<spool>.mass_g", mass, Text::tr("Filament left"), "g").headline();
  results.quantity("<spool>.length_m", length, Text::tr("Length left"), "m");
  results.quantity("total_g", total, Text::tr("All spools"), "g").within(500, std::nullopt);
  results.text("material", material, Text::tr("Material")).words({{"pla", "PLA"}, {"petg", "PETG"}});
}

StepResult evaluate(const SpoolWeightInputs& inputs, const StepContext& context) {
  const auto& key = keysOf<SpoolWeightResults>();
  StepResult result;
  const auto spools = spoolsOf(inputs.weighings);
  std::vector<Contribution> shares;
  double total = 0;
  for (const auto& spool : spools) {
    const Name name(resultName(spool.name), spool.name);
    if (!inputs.emptyMass) {
      result.wantFor(key.mass(name), {"empty_g"});
      result.wantFor(key.length(name), {"empty_g"});
      continue;
    }
    result.attempt({key.mass(name), key.length(name)}, [&] {
      Quantity left = massOf(spool, context);
      left.value -= *inputs.emptyMass;
      total += left.value;
      shares.push_back({left.u.value_or(0), left.dof});
      result.give(key.mass(name), left);
      if (context.sheet.filament) {
        result.give(key.length(name), lengthOf(left, inputs.material, *context.sheet.filament));
      } else {
        result.withhold(key.length(name), Text::tr("the machine sheet has no filament diameter"));
      }
    });
  }
  if (!shares.empty()) {
    result.give(key.total, combinedQuantity(total, "g", shares));
    result.give(key.material, inputs.material);
  }
  result.charts.push_back(massChart(spools));
  return result;
}

Step spoolWeightStep() {
  Step step;
  step.key = "spool-weight";
  step.name = Text::tr("Spool weight");
  step.purpose = Text::tr("How much filament is left.");
  step.stage = Stage::plastic;
  step.benchMinutes = 2;
  step.readsSheet = {"filament_mm"};
  step.emptyCharts = {massChart({})};
  return describedStep<SpoolWeightResults, SpoolWeightInputs>(std::move(step), &evaluate);
}

}  // namespace fettle
