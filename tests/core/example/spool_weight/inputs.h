#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/fields/field_list.h"

namespace fettle {

struct WeighingRow : TableRow {
  std::string spool;
  std::optional<double> mass;
  void describe(FieldList& columns);
};

struct SpoolWeightInputs {
  std::string material = "pla";
  std::vector<WeighingRow> weighings;
  std::optional<double> emptyMass;
  void describe(FieldList& fields);
};

}  // namespace fettle
