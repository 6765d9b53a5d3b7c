#include "core/steps/safety/circuits.h"

#include <algorithm>
#include <array>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/contract/result_name.h"

namespace fettle {
namespace {

struct WireSize {
  double area = 0, current = 0;  ///< mm², A
};

constexpr double largestWire = 16;

constexpr std::array wires = {
    // Common practice, no source.
    WireSize{0.14, 1}, WireSize{0.25, 2}, WireSize{0.34, 3}, WireSize{0.5, 5},
    // IEC 60204-1, method B1, from memory.
    WireSize{0.75, 8.6}, WireSize{1, 10.3}, WireSize{1.5, 13.5}, WireSize{2.5, 18.3}, WireSize{4, 25},
    WireSize{6, 32}, WireSize{10, 44}, WireSize{largestWire, 60}};

std::string amperes(double value) {
  return say(Text::tr("{0} A"), formatNumber(value));
}

void judgeLoad(StepResult& result, const Circuit& circuit, const std::string& id) {
  if (!circuit.load || !circuit.fuse) {
    result.withhold(id, "A", Text::tr("fuse or load was not entered"));
    return;
  }
  result.give(id, *circuit.fuse - *circuit.load, "A");
  if (*circuit.load > *circuit.fuse) {
    result.addFinding(
        "load-over-fuse", Severity::caution,
        say(Text::tr("{0}: the load of {1} is above the fuse of {2}; the fuse opens in normal use. "
                     "Do not fit a larger one without looking at the wire."),
            circuit.name, amperes(*circuit.load), amperes(*circuit.fuse)));
  }
}

}  // namespace

std::optional<double> wireLimit(double crossSection) {
  // Typed sizes meet those of the table but for rounding.
  constexpr double slack = 1e-9;
  const auto next = std::find_if(wires.begin(), wires.end(),
                                 [&](const WireSize& wire) { return wire.area > crossSection + slack; });
  if (next == wires.begin() || crossSection > largestWire + slack) {
    return std::nullopt;
  }
  return std::prev(next)->current;
}

std::vector<std::string> judgeCircuits(StepResult& result, const std::vector<Circuit>& circuits) {
  std::vector<std::string> tooLarge;
  DistinctNames names;
  for (const auto& circuit : circuits) {
    const std::string id = names.next(circuit.name);
    judgeLoad(result, circuit, id + ".load_margin_A");
    const auto limit = circuit.wire ? wireLimit(*circuit.wire) : std::nullopt;
    if (!limit) {
      const std::string why = circuit.wire ? Text::tr("the table of wires runs from 0.14 to 16 mm²")
                                           : Text::tr("the cross-section was not entered");
      result.withhold(id + ".wire_limit_A", "A", why);
      result.withhold(id + ".fuse_margin_A", "A", why);
      continue;
    }
    result.give(id + ".wire_limit_A", *limit, "A");
    if (!circuit.fuse) {
      result.withhold(id + ".fuse_margin_A", "A", Text::tr("the fuse was not entered"));
      continue;
    }
    result.give(id + ".fuse_margin_A", *limit - *circuit.fuse, "A");
    if (*circuit.fuse > *limit) {
      const std::string sentence = say(
          Text::tr("{0}: the fuse of {1} is above the {2} that {3} mm² carries; the wire would burn before "
                   "the fuse opens"),
          circuit.name, amperes(*circuit.fuse), amperes(*limit), formatNumber(*circuit.wire));
      result.addFinding("fuse-over-wire", Severity::fault, sentence + ".");
      tooLarge.push_back(sentence);
    }
  }
  return tooLarge;
}

Chart circuitsChart(const std::vector<Circuit>& circuits) {
  Chart chart;
  chart.view = "circuits";
  chart.title = Text::tr("Fuses and wires");
  chart.x = {Text::tr("cross-section"), "mm2"};
  chart.y = {Text::tr("current"), "A"};
  chart.whenEmpty = Text::tr("Enter circuits with fuse, cross-section and load.");
  Series carried, fuses, loads;
  carried.name = Text::tr("what the wire carries");
  carried.role = SeriesRole::model;
  fuses.name = Text::tr("fuse");
  fuses.role = SeriesRole::planned;
  loads.name = Text::tr("load");
  loads.role = SeriesRole::measured;
  double widest = 0;
  for (const auto& circuit : circuits) {
    if (!circuit.wire) {
      continue;
    }
    widest = std::max(widest, *circuit.wire);
    if (circuit.fuse) {
      fuses.x.push_back(*circuit.wire);
      fuses.y.push_back(*circuit.fuse);
    }
    if (circuit.load) {
      loads.x.push_back(*circuit.wire);
      loads.y.push_back(*circuit.load);
    }
  }
  if (widest == 0) {
    return chart;
  }
  for (std::size_t i = 0; i < wires.size(); ++i) {  // stairs: up at each size
    if (i > 0) {
      carried.x.push_back(wires.at(i).area);
      carried.y.push_back(wires.at(i - 1).current);
    }
    carried.x.push_back(wires.at(i).area);
    carried.y.push_back(wires.at(i).current);
    if (wires.at(i).area > widest) {
      break;
    }
  }
  chart.series = {std::move(carried), std::move(fuses), std::move(loads)};
  return chart;
}

}  // namespace fettle
