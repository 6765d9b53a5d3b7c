#include "core/steps/safety/circuits.h"

#include <algorithm>
#include <array>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/contract/result_name.h"
#include "core/steps/safety/results.h"

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

/// The paths of those of two cells of a circuit that are blank.
std::vector<std::string> blanks(const Circuit& circuit, bool wire, bool load) {
  std::vector<std::string> paths;
  const auto need = [&](bool there, const char* column) {
    if (!there) {
      paths.push_back(fmt::format("circuits[{}].{}", circuit.number, column));
    }
  };
  need(circuit.fuse.has_value(), "fuse_A");
  need(!wire || circuit.wire, "wire_mm2");
  need(!load || circuit.load, "load_A");
  return paths;
}

void judgeLoad(StepResult& result, const Circuit& circuit, const ResultId& id) {
  if (!circuit.load || !circuit.fuse) {
    result.wantFor(id, blanks(circuit, false, true));
    return;
  }
  result.give(id, *circuit.fuse - *circuit.load);
  if (*circuit.load > *circuit.fuse) {
    result.addFinding(
        "load-over-fuse", Severity::caution,
        say(Text::tr("{0}: the load of {1} is above the fuse of {2}; the fuse opens in normal use. "
                     "Do not fit a larger one without looking at the wire."),
            circuit.name, amperes(*circuit.load), amperes(*circuit.fuse)),
        {}, fmt::format("circuits[{}]", circuit.number));
  }
}

/// What is too large, in words; empty when the wire carries what the fuse lets through, or nobody knows.
std::string judgeFuse(StepResult& result, const Circuit& circuit, const Name& name) {
  const auto& key = keysOf<SafetyResults>();
  const ResultId margin = key.fuseMargin(name);
  if (!circuit.wire) {
    result.wantFor(key.wireLimit(name), {fmt::format("circuits[{}].wire_mm2", circuit.number)});
    result.wantFor(margin, blanks(circuit, true, false));
    return {};
  }
  const auto limit = wireLimit(*circuit.wire);
  if (!limit) {
    const std::string why = Text::tr("the table of wires runs from 0.14 to 16 mm²");
    result.withhold(key.wireLimit(name), why);
    result.withhold(margin, why);
    return {};
  }
  result.give(key.wireLimit(name), *limit);
  if (!circuit.fuse) {
    result.wantFor(margin, blanks(circuit, true, false));
    return {};
  }
  result.give(margin, *limit - *circuit.fuse);
  if (*circuit.fuse <= *limit) {
    return {};
  }
  std::string sentence =
      say(Text::tr("{0}: the fuse of {1} is above the {2} that {3} mm² carries; the wire would burn before "
                   "the fuse opens"),
          circuit.name, amperes(*circuit.fuse), amperes(*limit), formatNumber(*circuit.wire));
  result.addFinding("fuse-over-wire", Severity::fault, sentence + ".", {},
                    fmt::format("circuits[{}]", circuit.number));
  return sentence;
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
    const Name name(names.next(circuit.name), circuit.name);
    judgeLoad(result, circuit, keysOf<SafetyResults>().loadMargin(name));
    if (auto sentence = judgeFuse(result, circuit, name); !sentence.empty()) {
      tooLarge.push_back(std::move(sentence));
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
