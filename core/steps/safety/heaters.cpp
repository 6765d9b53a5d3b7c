#include "core/steps/safety/heaters.h"

#include <cmath>
#include <set>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/heaters.h"

namespace fettle {
namespace {

constexpr double copperPerKelvin = 0.0039;

/// Power and current of a resistance with the uncertainties of both readings.
struct Draw {
  Quantity power, current;
};

Draw drawOf(const HeaterReading& row, double volt, const Instrument& voltmeter, double factor) {
  const double uVolt = voltmeter.standardUncertainty(volt) / volt;
  const double uOhm = instruments::multimeterOhms().standardUncertainty(*row.ohm) / *row.ohm;
  const double power = volt * volt / (*row.ohm * factor);
  const double current = volt / (*row.ohm * factor);
  const Contribution ofPower[] = {{2 * uVolt * power}, {uOhm * power}};
  const Contribution ofCurrent[] = {{uVolt * current}, {uOhm * current}};
  return {combinedQuantity(power, "W", ofPower), combinedQuantity(current, "A", ofCurrent)};
}

void noteRatio(StepResult& result, const HeaterReading& row, const Quantity& power) {
  const double ratio = power.value / *row.rated;
  if (std::abs(ratio - 1) <= 0.10) {
    return;
  }
  std::string text = say(Text::tr("{0}: {1} from the resistance, {2} W rated."), heaterName(row.heater),
                         formatQuantity(power), formatNumber(*row.rated));
  // A heater for half of the voltage has a quarter of the resistance (P = V²/R).
  if (std::abs(ratio / 4 - 1) <= 0.15) {
    text += ' ';
    text += Text::tr("Four times its rating: it is made for half of this voltage. Do not switch it on.");
  } else if (std::abs(ratio * 4 - 1) <= 0.15) {
    text += ' ';
    text += Text::tr("A quarter of its rating: it is made for twice this voltage and will not get warm.");
  }
  result.find("heater-off-rating", ratio > 1 ? Severity::fault : Severity::caution, text);
}

void giveRatio(StepResult& result, const SafetyInputs& inputs, const HeaterReading& row, double volt,
               const Draw& cold, const Instrument& voltmeter) {
  const std::string id = row.heater + ".power_ratio";
  if (row.kind == "ptc") {
    result.withhold(id, "1",
                    Text::tr("the resistance of a ptc heater changes with its temperature; it is "
                             "not judged"));
    return;
  }
  Quantity power = cold.power;
  if (row.kind == "copper-trace") {
    const double factor = 1 + copperPerKelvin * (*row.working - inputs.room);
    power = drawOf(row, volt, voltmeter, factor).power;
    result.give(row.heater + ".working_power_W", power);
  }
  if (!row.rated) {
    result.withhold(id, "1", Text::tr("the rated power was not entered"));
    return;
  }
  const Contribution part[] = {{*power.u / *row.rated}};
  result.give(id, combinedQuantity(power.value / *row.rated, "1", part));
  noteRatio(result, row, power);
}

/// Names what a row lacks; none: it can be computed.
bool isWhole(StepResult& result, const HeaterReading& row, const std::optional<double>& volt) {
  const auto need = [&](bool there, const char* column) {
    if (!there) {
      result.missing.push_back("heaters[" + std::to_string(row.number) + "]." + column);
    }
    return there;
  };
  const bool heater = need(!row.heater.empty(), "heater");
  const bool ohm = need(row.ohm.has_value(), "ohm");
  const bool voltage = need(volt.has_value(), "volt");
  const bool working = need(row.kind != "copper-trace" || row.working, "working_C");
  return heater && ohm && voltage && working;
}

void giveLoad(StepResult& result, const SafetyInputs& inputs, const StepContext& context, double sum,
              const std::vector<Contribution>& parts) {
  if (!inputs.other) {
    const std::string why = Text::tr("the power of everything else on the supply was not entered");
    result.withhold("supply_load_W", "W", why);
    result.withhold("supply_load", "1", why);
    return;
  }
  const Quantity load = combinedQuantity(sum + *inputs.other, "W", parts);
  result.give("supply_load_W", load);
  if (!context.sheet.supplyPower) {
    result.withhold("supply_load", "1", Text::tr("the power of the supply is not on the machine sheet"));
    return;
  }
  const double supply = *context.sheet.supplyPower;
  const Contribution part[] = {{*load.u / supply, load.dof}};
  result.give("supply_load", combinedQuantity(load.value / supply, "1", part));
  if (load.value > 0.8 * supply) {
    result.find(
        "supply-overloaded", load.value > supply ? Severity::fault : Severity::caution,
        say(Text::tr("Heaters and all else take {0}, more than 80 % ({1} W) of the supply's {2} W: it "
                     "runs hot, sags or shuts down."),
            formatQuantity(load), formatNumber(0.8 * supply), formatNumber(supply)));
  }
}

}  // namespace

void judgeHeaters(StepResult& result, const SafetyInputs& inputs, const StepContext& context) {
  const Instrument& voltmeter = context.instrument("volt");
  std::set<std::string> seen;
  std::vector<Contribution> parts;
  double sum = 0;
  for (const auto& row : included(inputs.heaters)) {
    const auto volt = row.volt || row.fedFrom == "mains" ? row.volt : context.sheet.supplyVoltage;
    if (!isWhole(result, row, volt)) {
      continue;
    }
    if (!seen.insert(row.heater).second) {
      throw Refusal{say(Text::tr("Heaters, row {0}: {1} is there twice; one row a heater is needed."),
                        row.number, heaterName(row.heater))};
    }
    const Draw cold = drawOf(row, *volt, voltmeter, 1);
    result.give(row.heater + ".power_W", cold.power);
    result.give(row.heater + ".current_A", cold.current);
    giveRatio(result, inputs, row, *volt, cold, voltmeter);
    if (row.fedFrom == "supply") {
      sum += cold.power.value;
      parts.push_back({*cold.power.u});
    }
  }
  if (!seen.empty()) {
    giveLoad(result, inputs, context, sum, parts);
  }
}

}  // namespace fettle
