#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/fields/field_list.h"

namespace fettle {

/// A frequency read by other means.
struct Pluck : TableRow {
  std::string belt;
  std::optional<double> frequency, length;
  void describe(FieldList& columns);
};

/// A recording of one pluck or several of one belt.
struct BeltRecording : TableRow {
  std::string belt;
  std::optional<double> length;
  CapturePointer sound;
  void describe(FieldList& columns);
};

struct BeltTensionInputs {
  std::optional<double> length, mass, target;
  double targetWithin = 0.10;              ///< share of the target; common practice, no source
  double searchFrom = 20, searchTo = 600;  ///< Hz
  std::vector<Pluck> plucks;
  std::vector<BeltRecording> recordings;
  void describe(FieldList& fields);
};

}  // namespace fettle
