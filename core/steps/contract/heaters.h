#pragma once
#include <string>
#include <vector>

#include "core/steps/contract/field.h"

namespace fettle {

/// The heaters of a printer, for fields that name one.
std::vector<Choice> heaterChoices();

/// "Hot end" of "hot_end".
std::string heaterName(const std::string& key);

}  // namespace fettle
