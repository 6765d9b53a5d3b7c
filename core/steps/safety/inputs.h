#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/fields/field_list.h"

namespace fettle {

/// The items of the safety checklist in their order.
std::vector<Choice> safetyItems();

/// Resistance from the inlet's earth pin to one touchable metal part.
struct EarthReading : TableRow {
  std::string part;
  std::optional<double> ohm;
  void describe(FieldList& columns);
};

/// One heater, measured cold and unplugged.
struct HeaterReading : TableRow {
  std::string heater;  ///< "hot_end", "bed", "chamber"
  std::string kind = "cartridge";
  std::string fedFrom = "supply";  ///< or "mains"
  std::optional<double> ohm, volt, rated, working;
  void describe(FieldList& columns);
};

/// One fused circuit.
struct Circuit : TableRow {
  std::string name;
  std::optional<double> fuse, wire, load;
  void describe(FieldList& columns);
};

struct SafetyInputs {
  std::vector<ChecklistAnswer> checks;
  std::vector<EarthReading> earth;
  std::vector<HeaterReading> heaters;
  double room = 25;             ///< °C at which the heaters were read
  std::optional<double> other;  ///< W of all that is no heater on the supply
  std::vector<Circuit> circuits;
  void describe(FieldList& fields);
};

}  // namespace fettle
