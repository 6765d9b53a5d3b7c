#pragma once
#include <QString>
#include <optional>
#include <string>
#include <tl/expected.hpp>

#include "core/fields/field.h"

namespace fettle::ui {

/// Nothing was entered: null, an empty text or an empty list.
bool isBlank(const Json& value);

/// The member of an object; null when there is none.
const Json& memberOf(const Json& object, const std::string& key);

/// "margin, mm": what stands above a box or a column.
QString captionOf(const Field& field);

/// The key as the beginning of an object name: "bed_C" -> "bedC".
QString objectNameOf(const std::string& key);

/// The shortest text that reads back as the same number; decimal point, minus sign U+2212.
QString numberText(double value);

/// Decimals behind the point of numberText(); 0 where it is written with an exponent.
int decimalsOf(double value);

/// A value as it is typed, copied and pasted; empty for a blank.
QString valueText(const Field& field, const Json& value);

/// Reads what somebody typed or pasted: numbers with decimal comma or point within the field's bounds,
/// choices by word or key, "yes" and "no". Blank text is null.
/// @return the value, or one sentence that begins with the field's label and says what is wrong
tl::expected<Json, QString> valueFromText(const Field& field, const QString& text);

/// What may be answered to a choice or a yes or no, in the order of the field; valueText() has the words.
std::vector<Json> answersOf(const Field& field);

/// Whether more keys may still make a number of it: "-", "1e".
bool isUnfinished(const Field& field, const QString& text);

}  // namespace fettle::ui
