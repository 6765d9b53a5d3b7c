#pragma once
#include <optional>
#include <string>

#include "core/measure/json.h"

namespace fettle {

/// What keeps a text from being a history (see the schema in resources/schema), in one sentence that names
/// the place: "sessions[2].runs[1].step: a text is needed." Fields the form does not have are refused,
/// since nothing of a history may get lost on its way in. Nothing when the form is right.
std::optional<std::string> problemOfHistory(const Json& json);

}  // namespace fettle
