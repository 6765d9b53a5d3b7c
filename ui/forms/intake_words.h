#pragma once
#include <QString>

#include "core/fields/field.h"
#include "core/intake/table_preview.h"

namespace fettle::ui {

/// What can be said about how a text is written, as fields: the keys are those of a reference's "format".
std::vector<Field> formatFields();
/// A format as values of these fields.
Json formatValues(const TextFormat& format);
/// "Names of the columns in their own line, units below. 3 comment lines above the rows."
QString recognisedWords(const TablePreview& preview);

}  // namespace fettle::ui
