#pragma once
#include <nlohmann/json.hpp>

namespace fettle {

/// Inputs, history and results travel as JSON values; keys are kept sorted, so equal content is equal text.
using Json = nlohmann::json;

}  // namespace fettle
