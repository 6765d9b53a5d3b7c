#pragma once
#include <string>
#include <vector>

#include "core/fields/field_list.h"

namespace fettle {

/// One line of what the controller lists, and the setting the user took it for.
struct ListedValue : TableRow {
  std::string name, value;
  std::string setting;  ///< id of a setting; empty while not matched
  void describe(FieldList& columns);
};

struct ConfigReviewInputs {
  std::vector<ListedValue> listed;
  void describe(FieldList& fields);
};

}  // namespace fettle
