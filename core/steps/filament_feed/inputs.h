#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/fields/field_list.h"

namespace fettle {

/// A length of filament commanded, and a mark's distance from the inlet before and after.
struct Draw : TableRow {
  std::optional<double> commanded, before, after, speed;
  void describe(FieldList& columns);
  double ratio() const { return (*before - *after) / *commanded; }
};

/// The filament's diameter at one place, in two directions across each other.
struct DiameterPlace : TableRow {
  std::optional<double> first, second;
  void describe(FieldList& columns);
  double mean() const { return (*first + *second) / 2; }
};

struct FilamentFeedInputs {
  std::vector<Draw> draws;
  std::vector<DiameterPlace> diameters;
  std::string lot;
  std::optional<double> dryingTemperature, dryingTime, massBefore, massAfter;
  void describe(FieldList& fields);
};

}  // namespace fettle
