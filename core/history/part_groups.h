#pragma once
#include <string>
#include <vector>

namespace fettle {

/// A kind of change and the steps it makes due.
struct PartGroup {
  std::string key;
  std::string label;
  std::vector<std::string> due;  ///< step keys, whether or not the catalogue has them yet
};

/// The groups a user can choose from after a change, then those that follow from adopted settings.
const std::vector<PartGroup>& partGroups();

/// The group of that key, or null.
const PartGroup* findPartGroup(const std::string& key);

/// The group that adopting a setting sets off: "<axis>.shaper", "<axis>.acceleration" and
/// "print_temperature_C" do; null for all others.
const PartGroup* groupOfAdoption(const std::string& setting);

}  // namespace fettle
