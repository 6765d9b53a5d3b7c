#include <algorithm>
#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/steps/bed_shape/faults.h"
#include "core/steps/bed_shape/results.h"

namespace fettle {
namespace {

// Common practice, no source.
constexpr double measurementFault = 1.0;

std::string sideWords(BedSide side) {
  switch (side) {
    case BedSide::left:
      return Text::tr("Left side (−x)");
    case BedSide::right:
      return Text::tr("Right side (+x)");
    case BedSide::front:
      return Text::tr("Front side (−y)");
    case BedSide::back:
      break;
  }
  return Text::tr("Back side (+y)");
}

std::string lowOrHigh(double step) {
  return step < 0 ? Text::tr("low") : Text::tr("high");
}

void reportDrop(StepResult& result, const EdgeLine& edge) {
  result.addFinding(
      "edge-drop", Severity::fault,
      say(Text::tr("{0}: {1} lies {2} mm {3} against the straight continuation of the points beside "
                   "it, in {4} % of the lines. The probe is probably off the bed or on a clip here. "
                   "This surface must not be used."),
          sideWords(edge.side),
          edge.line == 1 ? Text::tr("the outermost line") : Text::tr("the second line"),
          formatFixed(std::abs(edge.step), 2), lowOrHigh(edge.step), formatFixed(100 * edge.agree, 0)),
      "probe-position");
}

void reportCurl(StepResult& result, const EdgeLine& edge, bool bothSides) {
  result.addFinding(
      "edge-curl", Severity::caution,
      say(bothSides ? Text::tr("{0}: the edge is {1} mm {2}, and the opposite side is alike: the "
                               "plate or sheet seems to curl. Look whether it lies flat when soaked.")
                    : Text::tr("{0}: the edge is {1} mm {2}: the plate or sheet seems to curl, or a "
                               "clip lifts it. Look whether it lies flat when soaked."),
          sideWords(edge.side), formatFixed(std::abs(edge.step), 2), lowOrHigh(edge.step)),
      "probe-position");
}

bool bothSidesAlike(const std::vector<EdgeLine>& edges, const EdgeLine& edge) {
  const auto axis = [](BedSide side) { return side == BedSide::left || side == BedSide::right; };
  return std::any_of(edges.begin(), edges.end(), [&](const EdgeLine& other) {
    return other.side != edge.side && axis(other.side) == axis(edge.side) && !other.drop &&
           other.step * edge.step > 0;
  });
}

/// `edge_drop` fails on a drop, and where an edge lies over a millimetre off with both sides alike.
void reportEdges(StepResult& result, const GridFaults& faults) {
  const auto& key = keysOf<BedShapeResults>();
  result.give(key.edgeDrop, faults.largestEdge);
  bool fails = false;
  for (const auto& edge : faults.edges) {
    if (edge.drop) {
      reportDrop(result, edge);
    } else {
      reportCurl(result, edge, bothSidesAlike(faults.edges, edge));
    }
    const bool tooFar = std::abs(edge.step) > measurementFault;
    if (tooFar) {
      result.addFinding(
          "edge-too-far", Severity::fault,
          say(Text::tr("{0}: {1} mm at an edge is a fault of the measurement, not a bed (limit of "
                       "1 mm: common practice, no source)."),
              sideWords(edge.side), formatFixed(std::abs(edge.step), 2)),
          "probe-position");
    }
    fails = fails || edge.drop || tooFar;
  }
  if (fails) {
    result.judge(key.edgeDrop, {Verdict::fail}, {});
  }
}

/// To a tenth of a millimetre: nobody finds a place on a bed more closely.
std::string placeOf(const GridReadings& grid, std::size_t column, std::size_t row) {
  const auto tenths = [](double place) { return formatNumber(std::round(10 * place) / 10); };
  return tenths(grid.x[column]) + ", " + tenths(grid.y[row]);
}

template <typename Fault>
const Fault& largest(const std::vector<Fault>& faults) {
  return *std::max_element(faults.begin(), faults.end(), [](const Fault& a, const Fault& b) {
    return std::abs(a.size) < std::abs(b.size);
  });
}

void reportSpikes(StepResult& result, const GridReadings& grid, const std::vector<Spike>& spikes) {
  if (spikes.empty()) {
    return;
  }
  const Spike& worst = largest(spikes);
  result.addFinding(
      "spike", Severity::caution,
      spikes.size() == 1
          ? say(Text::tr(
                    "The point at {0} stands out from its neighbours by {1} mm: wipe the place and the "
                    "probe tip, then touch it again."),
                placeOf(grid, worst.column, worst.row), formatFixed(worst.size, 2))
          : say(Text::tr("{0} points stand out from their neighbours, most of all that at {1} by {2} mm: "
                         "wipe the places and the probe tip, then touch them again."),
                spikes.size(), placeOf(grid, worst.column, worst.row), formatFixed(worst.size, 2)),
      "probe-repeatability");
}

void reportSteps(StepResult& result, const GridReadings& grid, const std::vector<HeightStep>& steps) {
  if (steps.empty()) {
    return;
  }
  const HeightStep& worst = largest(steps);
  result.addFinding(
      "step", Severity::caution,
      say(Text::tr("Neighbours differ by more than 0.5 mm with the tilt removed (pairs: {0}), most of all "
                   "{1} and {2} by {3} mm: look for a chip under the sheet or a sheet not seated."),
          steps.size(), placeOf(grid, worst.column, worst.row),
          worst.alongX ? placeOf(grid, worst.column + 1, worst.row)
                       : placeOf(grid, worst.column, worst.row + 1),
          formatFixed(worst.size, 2)),
      "probe-position");
}

}  // namespace

void reportFaults(StepResult& result, const GridReadings& grid, const GridFaults& faults) {
  constexpr std::size_t fewestLines = 4;
  const std::size_t fewer = std::min(grid.x.size(), grid.y.size());
  if (std::max(grid.x.size(), grid.y.size()) < fewestLines) {
    result.withhold(keysOf<BedShapeResults>().edgeDrop, Text::tr("the grid has fewer than 4 lines"));
  } else {
    reportEdges(result, faults);
  }
  if (fewer < fewestLines) {
    result.addFinding(
        "grid-too-small", Severity::caution,
        say(Text::tr("The grid has {0} × {1} lines: an edge off the bed shows only with 4 lines or "
                     "more each way."),
            grid.x.size(), grid.y.size()));
  }
  reportSpikes(result, grid, faults.spikes);
  reportSteps(result, grid, faults.steps);
}

}  // namespace fettle
