#include "core/steps/safety/heaters.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/heaters.h"

namespace fettle {
namespace {

constexpr double copperPerKelvin = 0.0039;  // 1/K near room temperature, common tables of materials
constexpr double allowedShare = 0.10;       // common practice, no source

/// Power and current of a resistance with the uncertainties of both readings.
struct Draw {
  Quantity power, current;
  double ofVolt = 0, ofOhm = 0;  ///< W, what the limits of error of the two meters do to the power
};

Draw drawOf(const HeaterReading& row, double volt, const StepContext& context, double factor) {
  const Instrument& ohmmeter = context.instrument("heaters.ohm");
  const Instrument& voltmeter = context.instrument("volt");
  const double uVolt = voltmeter.standardUncertainty(volt) / volt;
  const double uOhm = ohmmeter.standardUncertainty(*row.ohm) / *row.ohm;
  const double power = volt * volt / (*row.ohm * factor);
  const double current = volt / (*row.ohm * factor);
  const Contribution ofPower[] = {{2 * uVolt * power}, {uOhm * power}};
  const Contribution ofCurrent[] = {{uVolt * current}, {uOhm * current}};
  return {combinedQuantity(power, "W", ofPower), combinedQuantity(current, "A", ofCurrent),
          2 * power * voltmeter.limitOfError(volt) / (volt * std::sqrt(3.0)),
          power * ohmmeter.limitOfError(*row.ohm) / (*row.ohm * std::sqrt(3.0))};
}

void noteRatio(StepResult& result, const HeaterReading& row, const Quantity& power, double rated) {
  const double ratio = power.value / rated;
  if (std::abs(ratio - 1) <= allowedShare) {
    return;
  }
  std::string text = say(Text::tr("{0}: {1} from the resistance, {2} W rated."), heaterName(row.heater),
                         formatQuantity(power), formatNumber(rated));
  // A heater for half of the voltage has a quarter of the resistance (P = V²/R).
  if (std::abs(ratio / 4 - 1) <= 0.15) {
    text += ' ';
    text += Text::tr("Four times its rating: it is made for half of this voltage. Do not switch it on.");
  } else if (std::abs(ratio * 4 - 1) <= 0.15) {
    text += ' ';
    text += Text::tr("A quarter of its rating: it is made for twice this voltage and will not get warm.");
  }
  result.addFinding("heater-off-rating", ratio > 1 ? Severity::fault : Severity::caution, text);
}

std::optional<double> ratedPower(const HeaterReading& row, const MachineSheet& sheet) {
  if (row.rated) {
    return row.rated;
  }
  return row.heater == "hot_end" ? sheet.hotEndPower : row.heater == "bed" ? sheet.bedPower : std::nullopt;
}

/// The verdict of <heater>.power_W: of the power at working temperature where that is another one.
void judgePower(StepResult& result, const HeaterReading& row, const Quantity& power, double rated,
                const StepContext& context) {
  const std::string id = row.heater + ".power_W";
  const Tolerance tenPercent{(1 - allowedShare) * rated, (1 + allowedShare) * rated};
  const Tolerance allowed = context.changedTolerance("safety." + id).value_or(tenPercent);
  const Judgement judgement = judge(power, allowed);
  result.judgements.push_back({id, judgement.verdict, {}, 0});
  if (judgement.tooCoarse) {
    result.addFinding("instrument-too-coarse", Severity::caution,
                      guardBandsFill(say(Text::tr("{0}, power"), heaterName(row.heater)), "W", judgement,
                                     *allowed.high - *allowed.low) +
                          ' ' + say(Text::tr("A {0} would do."), instruments::lowOhmTester().name));
  }
  noteRatio(result, row, power, rated);
}

void giveRatio(StepResult& result, const SafetyInputs& inputs, const HeaterReading& row, double volt,
               const Draw& cold, const StepContext& context) {
  const std::string id = row.heater + ".power_ratio";
  if (row.kind == "ptc") {
    result.withhold(id, "1",
                    Text::tr("the resistance of a ptc heater changes with its temperature; it is "
                             "not judged"));
    result.judgements.push_back({row.heater + ".power_W", Verdict::none, {}, 0});
    return;
  }
  Quantity power = cold.power;
  if (row.kind == "copper-trace") {
    const double factor = 1 + copperPerKelvin * (*row.working - inputs.room);
    power = drawOf(row, volt, context, factor).power;
    result.give(row.heater + ".working_power_W", power);
  }
  const auto rated = ratedPower(row, context.sheet);
  if (!rated) {
    result.withhold(id, "1", Text::tr("the rated power was not entered and is not on the machine sheet"));
    result.judgements.push_back({row.heater + ".power_W", Verdict::none, {}, 0});
    return;
  }
  const Contribution part[] = {{*power.u / *rated}};
  result.give(id, combinedQuantity(power.value / *rated, "1", part));
  judgePower(result, row, power, *rated, context);
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

/// What the heaters on the supply draw together.
struct SupplyLoad {
  double power = 0, ofVolt = 0, ofOhm = 0;  ///< W
  std::vector<Contribution> ofResolution;
  void add(const Draw& draw) {
    power += draw.power.value;
    // The limit of error of a meter is the same for all heaters: it adds up, unlike the resolution.
    ofVolt += draw.ofVolt;
    ofOhm += draw.ofOhm;
    const double squares =
        *draw.power.u * *draw.power.u - draw.ofVolt * draw.ofVolt - draw.ofOhm * draw.ofOhm;
    ofResolution.push_back({std::sqrt(std::max(squares, 0.0))});
  }
  Quantity with(double other) const {
    std::vector<Contribution> parts = ofResolution;
    parts.push_back({ofVolt});
    parts.push_back({ofOhm});
    return combinedQuantity(power + other, "W", parts);
  }
};

void giveLoad(StepResult& result, const SafetyInputs& inputs, const StepContext& context,
              const SupplyLoad& heaters) {
  if (!inputs.other) {
    const std::string why = Text::tr("the power of everything else on the supply was not entered");
    result.withhold("supply_load_W", "W", why);
    result.withhold("supply_load", "1", why);
    return;
  }
  const Quantity load = heaters.with(*inputs.other);
  result.give("supply_load_W", load);
  if (!context.sheet.supplyPower) {
    result.withhold("supply_load", "1", Text::tr("the power of the supply is not on the machine sheet"));
    return;
  }
  const double supply = *context.sheet.supplyPower;
  const Contribution part[] = {{*load.u / supply, load.dof}};
  result.give("supply_load", combinedQuantity(load.value / supply, "1", part));
  if (load.value > 0.8 * supply) {
    result.addFinding(
        "supply-overloaded", load.value > supply ? Severity::fault : Severity::caution,
        say(Text::tr("Heaters and all else take {0}, more than 80 % ({1} W) of the supply's {2} W: it "
                     "runs hot, sags or shuts down."),
            formatQuantity(load), formatNumber(0.8 * supply), formatNumber(supply)));
  }
}

}  // namespace

void judgeHeaters(StepResult& result, const SafetyInputs& inputs, const StepContext& context) {
  std::set<std::string> seen;
  SupplyLoad load;
  for (const auto& row : included(inputs.heaters)) {
    const auto volt = row.volt || row.fedFrom == "mains" ? row.volt : context.sheet.supplyVoltage;
    if (!isWhole(result, row, volt)) {
      continue;
    }
    if (!seen.insert(row.heater).second) {
      throw Refusal{say(Text::tr("Heaters, row {0}: {1} is there twice; one row a heater is needed."),
                        row.number, heaterName(row.heater))};
    }
    const Draw cold = drawOf(row, *volt, context, 1);
    result.give(row.heater + ".power_W", cold.power);
    result.give(row.heater + ".current_A", cold.current);
    giveRatio(result, inputs, row, *volt, cold, context);
    if (row.fedFrom == "supply") {
      load.add(cold);
    }
  }
  if (!seen.empty()) {
    giveLoad(result, inputs, context, load);
  }
}

}  // namespace fettle
