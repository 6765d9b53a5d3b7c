#pragma once
#include <optional>
#include <vector>

#include "core/fields/readings.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

enum class BedSide { left, right, front, back };

/// How far the k-th line of points from a side lies beside the straight continuation of the next two.
struct EdgeLine {
  BedSide side = BedSide::left;
  int line = 1;      ///< k, from the side: 1 or 2
  double step = 0;   ///< median over the cross lines; below zero: the edge is low
  double agree = 0;  ///< part of the cross lines whose own step has the median's sign
  bool drop = false;
  bool curl = false;
};

/// d_j = z_k − (z_{k+1} + (z_{k+1} − z_{k+2})·(p_k − p_{k+1})/(p_{k+1} − p_{k+2})) along each cross line j,
/// p the places of the lines: with equal spacing z_k − (2 z_{k+1} − z_{k+2}). m = median of d_j. All lines
/// k = 1, 2 of all sides that can be told, k = 2 only with five lines or more, none with fewer than four.
/// A drop: at least 75 % of d_j share m's sign and |m| > max(0.5 mm, 3·|m of the opposite side|). A curl:
/// they share it and |m| is over 0.3 mm, but it is no drop (limits: common practice, no source).
std::vector<EdgeLine> edgeLines(const GridReadings& grid);

/// A point far from its neighbours, or two neighbours far from each other.
struct Spike {
  std::size_t column = 0, row = 0;  ///< from 0
  double size = 0;                  ///< height less the median of up to eight neighbours
};
struct HeightStep {
  std::size_t column = 0, row = 0;  ///< of the first, from 0
  bool alongX = true;               ///< the second one is the next along x, else along y
  double size = 0;                  ///< second less first
};

/// What is wrong with a net of heights.
struct GridFaults {
  std::vector<EdgeLine> edges;              ///< at most one per side: its drop, else its largest curl
  double largestEdge = 0;                   ///< the step largest in size over all lines that were told
  std::vector<std::vector<bool>> affected;  ///< [row][column] points on lines of a drop
  std::vector<Spike> spikes;
  std::vector<HeightStep> steps;

  bool hasDrop() const;
};

/// Spikes: modified z-score of z − median of up to eight neighbours over 3.5, scaled MAD not below 0.005
/// mm, and over 0.1 mm. Steps: neighbours along x or y over 0.5 mm apart. Both on heights less the
/// least-squares plane of the points that lie on no line of a drop; those lines raise neither and are
/// nobody's neighbours.
GridFaults findFaults(const GridReadings& grid);

/// Gives `edge_drop` with its verdict and the findings `edge-drop`, `edge-curl`, `edge-too-far`, `spike`,
/// `step` and `grid-too-small`.
void reportFaults(StepResult& result, const GridReadings& grid, const GridFaults& faults);

}  // namespace fettle
