#pragma once
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "core/steps/contract/step_context.h"

namespace fettle {

/// Takes what every step's inputs may carry out of them and into the context: "as_found"
/// and "in_force" {setting: value} and "instruments" {column: {"name", "r", "e"}}. A column of that name in
/// any table is read with the chosen instrument; those without one get the one of their description. The
/// error is one sentence.
tl::expected<void, std::string> takeSharedInputs(const std::vector<Field>& fields, Json& inputs,
                                                 StepContext& context);

/// {setting: number or text} as values; the error is one sentence that begins with `what`.
tl::expected<SettingValues, std::string> settingValuesFromJson(const Json& json,
                                                               const std::string& what = "as_found");
Json toJson(const SettingValues& values);

/// An accepted result: a number, or {value, u, U, dof, low, high}; the error is one sentence that begins
/// with `what`.
tl::expected<std::map<std::string, Quantity>, std::string> acceptedFromJson(const Json& json,
                                                                            const std::string& what);
Json toJson(const std::map<std::string, Quantity>& accepted);

}  // namespace fettle
