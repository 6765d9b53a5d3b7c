#pragma once
#include <vector>

#include "core/fields/field.h"

namespace fettle {

/// The JSON schema (2020-12) of an object with these fields and no others. What is blank may be left out or
/// null.
Json schemaOf(const std::vector<Field>& fields);

}  // namespace fettle
