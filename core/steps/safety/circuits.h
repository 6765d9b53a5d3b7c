#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/steps/contract/step_result.h"
#include "core/steps/safety/inputs.h"

namespace fettle {

/// Continuous current a copper wire of this cross-section carries, A: that of the next smaller size of the
/// table, because sizes between do not exist and the lower figure is the safe one. None below 0.14 mm² and
/// above 16 mm². From 0.75 mm² on: PVC-insulated, in conduit or trunking, 40 °C around (IEC 60204-1, table
/// of method B1, from memory). Below: common practice, no source. Bundles and warmer places carry less.
std::optional<double> wireLimit(double crossSection);

/// `<circuit>.wire_limit_A`; `<circuit>.fuse_margin_A` = wire limit − fuse, `<circuit>.load_margin_A` =
/// fuse − load, both at least 0: load ≤ fuse ≤ wire (IEC 60364-4-43, from memory). Findings
/// `fuse-over-wire` and `load-over-fuse`. Returns the fuses that are too large for their wire, in words.
std::vector<std::string> judgeCircuits(StepResult& result, const std::vector<Circuit>& circuits);

/// Loads and fuses over the cross-section of their wire, with what wires carry.
Chart circuitsChart(const std::vector<Circuit>& circuits);

}  // namespace fettle
