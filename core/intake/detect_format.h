#pragma once
#include <string_view>

#include "core/intake/text_format.h"

namespace fettle {

/// Finds out how a table is written from several hundred lines at its beginning, middle and end. Quoted
/// text is not looked into. Refuses empty text, binary data and text without any number.
Intake<TextFormat> detectFormat(std::string_view bytes, const FormatHints& hints = {});

}  // namespace fettle
