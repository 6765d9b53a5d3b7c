#pragma once
#include <string>
#include <vector>

#include "core/steps/contract/field.h"

namespace fettle {

/// The heaters a machine may have: keys of files and words of screens.
std::vector<Choice> heaterChoices();

/// "hot_end" as "Hot end"; another key as it is.
std::string heaterLabel(const std::string& heater);

}  // namespace fettle
