#pragma once
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "core/steps/contract/step_context.h"

namespace fettle {

/// Takes what every step's inputs may carry out of them and into the context: "as_found"
/// {setting: value} and "instruments" {column: {"name", "r", "e"}}. A column of that name in any
/// table is read with the chosen instrument; those without one get the one of their description. The error
/// is one sentence.
tl::expected<void, std::string> takeSharedInputs(const std::vector<Field>& fields, Json& inputs,
                                                 StepContext& context);

/// {setting: number or text} as values; the error is one sentence that begins with `what`.
tl::expected<SettingValues, std::string> settingValuesFromJson(const Json& json,
                                                               const std::string& what = "as_found");
Json toJson(const SettingValues& values);

}  // namespace fettle
