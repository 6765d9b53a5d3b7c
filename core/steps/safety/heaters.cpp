#include "core/steps/safety/heaters.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/heaters.h"
#include "core/steps/contract/step.h"
#include "core/steps/safety/results.h"

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
  result.addFinding("heater-off-rating", ratio > 1 ? Severity::fault : Severity::caution, text, {},
                    fmt::format("heaters[{}]", row.number));
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
  const ResultId id = keysOf<SafetyResults>().power(row.heater);
  const Tolerance tenPercent{(1 - allowedShare) * rated, (1 + allowedShare) * rated};
  const Tolerance allowed = context.changedTolerance("safety." + id.id).value_or(tenPercent);
  const Judgement judgement = judge(power, allowed);
  // The limit stands beside the power it is about; of a copper trace that is the one when warm.
  result.judge(id, judgement, row.kind == "copper-trace" ? Tolerance{} : allowed);
  if (judgement.tooCoarse) {
    result.addFinding("instrument-too-coarse", Severity::caution,
                      guardBandsFill(say(Text::tr("{0}, power"), heaterName(row.heater)), "W", judgement,
                                     *allowed.high - *allowed.low) +
                          ' ' + say(Text::tr("A {0} would do."), instruments::lowOhmTester().name));
  }
  noteRatio(result, row, power, rated);
}

/// The power that is compared with the rated one: cold, of a copper trace at its working temperature.
std::optional<Quantity> comparedPower(StepResult& result, const SafetyInputs& inputs,
                                      const HeaterReading& row, double volt, const Draw& cold,
                                      const StepContext& context) {
  if (row.kind != "copper-trace") {
    return cold.power;
  }
  const auto& key = keysOf<SafetyResults>();
  if (!row.working) {
    const std::string path = fmt::format("heaters[{}].working_C", row.number);
    result.wantFor(key.workingPower(row.heater), {path});
    result.wantFor(key.powerRatio(row.heater), {path});
    return std::nullopt;
  }
  if (!std::isfinite(inputs.room)) {  // was refused
    result.withhold(key.workingPower(row.heater), {});
    result.withhold(key.powerRatio(row.heater), {});
    return std::nullopt;
  }
  const double factor = 1 + copperPerKelvin * (*row.working - inputs.room);
  const Quantity power = drawOf(row, volt, context, factor).power;
  result.give(key.workingPower(row.heater), power);
  return power;
}

void giveRatio(StepResult& result, const SafetyInputs& inputs, const HeaterReading& row, double volt,
               const Draw& cold, const StepContext& context) {
  const auto& key = keysOf<SafetyResults>();
  const ResultId id = key.powerRatio(row.heater);
  if (row.kind == "ptc") {
    result.withhold(id, Text::tr("the resistance of a ptc heater changes with its temperature; it is "
                                 "not judged"));
    result.judge(key.power(row.heater), {}, {});
    return;
  }
  const auto power = comparedPower(result, inputs, row, volt, cold, context);
  const auto rated = ratedPower(row, context.sheet);
  if (!power || !rated) {
    if (power) {
      result.withhold(id, Text::tr("the rated power was not entered and is not on the machine sheet"));
    }
    result.judge(key.power(row.heater), {}, {});
    return;
  }
  const Contribution part[] = {{*power->u / *rated}};
  result.give(id, combinedQuantity(power->value / *rated, "1", part));
  judgePower(result, row, *power, *rated, context);
}

/// What a row lacks for the power of its heater.
std::vector<std::string> lackedBy(const HeaterReading& row, const std::optional<double>& volt) {
  std::vector<std::string> paths;
  if (!row.ohm) {
    paths.push_back(fmt::format("heaters[{}].ohm", row.number));
  }
  if (!volt) {
    paths.push_back(fmt::format("heaters[{}].volt", row.number));
  }
  return paths;
}

/// What the heaters on the supply draw together.
struct SupplyLoad {
  double power = 0, ofVolt = 0, ofOhm = 0;  ///< W
  std::vector<Contribution> ofResolution;
  std::vector<std::string> lacks;  ///< paths without which it is too small
  bool refused = false;            ///< a heater contradicts itself
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
  const auto& key = keysOf<SafetyResults>();
  const auto wantFor = [&](const std::vector<std::string>& paths) {
    result.wantFor(key.supplyPower, paths);
    result.wantFor(key.supplyLoad, paths);
  };
  if (heaters.refused) {
    const std::string why = Text::tr("a heater is there twice");
    result.withhold(key.supplyPower, why);
    result.withhold(key.supplyLoad, why);
    return;
  }
  if (!heaters.lacks.empty()) {
    wantFor(heaters.lacks);
    return;
  }
  if (!inputs.other) {
    wantFor({"other_W"});
    return;
  }
  const Quantity load = heaters.with(*inputs.other);
  result.give(key.supplyPower, load);
  if (!context.sheet.supplyPower) {
    result.withhold(key.supplyLoad, Text::tr("the power of the supply is not on the machine sheet"));
    return;
  }
  const double supply = *context.sheet.supplyPower;
  const Contribution part[] = {{*load.u / supply, load.dof}};
  result.give(key.supplyLoad, combinedQuantity(load.value / supply, "1", part));
  if (load.value > 0.8 * supply) {
    result.addFinding(
        "supply-overloaded", load.value > supply ? Severity::fault : Severity::caution,
        say(Text::tr("Heaters and all else take {0}, more than 80 % ({1} W) of the supply's {2} W: it "
                     "runs hot, sags or shuts down."),
            formatQuantity(load), formatNumber(0.8 * supply), formatNumber(supply)));
  }
}

void giveHeater(StepResult& result, const SafetyInputs& inputs, const HeaterReading& row,
                const StepContext& context, SupplyLoad& load) {
  const auto& key = keysOf<SafetyResults>();
  const bool fed = row.fedFrom == "supply";
  const auto volt = row.volt || !fed ? row.volt : context.sheet.supplyVoltage;
  if (const auto lacks = lackedBy(row, volt); !lacks.empty()) {
    result.wantFor(key.power(row.heater), lacks);
    result.wantFor(key.current(row.heater), lacks);
    result.wantFor(key.powerRatio(row.heater), lacks);
    if (fed) {
      load.lacks.insert(load.lacks.end(), lacks.begin(), lacks.end());
    }
    return;
  }
  const Draw cold = drawOf(row, *volt, context, 1);
  result.give(key.power(row.heater), cold.power);
  result.give(key.current(row.heater), cold.current);
  giveRatio(result, inputs, row, *volt, cold, context);
  if (fed) {
    load.add(cold);
  }
}

}  // namespace

void judgeHeaters(StepResult& result, const SafetyInputs& inputs, const StepContext& context) {
  const auto& key = keysOf<SafetyResults>();
  const auto rows = included(inputs.heaters);
  std::set<std::string> seen;
  SupplyLoad load;
  for (const auto& row : rows) {
    if (!seen.insert(row.heater).second) {
      continue;
    }
    const auto again = std::find_if(rows.begin(), rows.end(), [&](const HeaterReading& other) {
      return other.heater == row.heater && other.number != row.number;
    });
    const ResultId power = key.power(row.heater);
    const bool once = result.attempt({power, key.current(row.heater), key.powerRatio(row.heater)}, [&] {
      if (again != rows.end()) {
        throw Refusal{say(Text::tr("Heaters, row {0}: {1} is there twice; one row a heater is needed."),
                          again->number, heaterName(row.heater)),
                      fmt::format("heaters[{}]", again->number)};
      }
      giveHeater(result, inputs, row, context, load);
    });
    load.refused = load.refused || !once;
  }
  if (!rows.empty()) {
    giveLoad(result, inputs, context, load);
  }
}

}  // namespace fettle
