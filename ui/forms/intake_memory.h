#pragma once
#include <QString>

#include "core/fields/field.h"

namespace fettle::ui {

/// How texts of one shape (see shapeSignature) were taken into a field the last time: the part of the
/// reference that can be used again. Kept for the program, not in the machine file.
Json rememberedIntake(const Field& field, const std::string& shape);
void rememberIntake(const Field& field, const std::string& shape, const Json& reference);

}  // namespace fettle::ui
