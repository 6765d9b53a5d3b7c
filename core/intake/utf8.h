#pragma once
#include <string>
#include <string_view>

namespace fettle {

void appendUtf8(std::string& out, char32_t character);

/// Whether a byte has no place in a text: control characters other than blanks, line ends and the
/// end-of-file mark of old.
bool isControlCharacter(char c);

/// The text itself if it is UTF-8, else read as ISO 8859-1 (so that a degree sign survives).
std::string validUtf8(std::string_view text);

/// A piece of foreign text fit for a sentence: valid, without control characters, cut to 40 characters.
std::string shownText(std::string_view text);

}  // namespace fettle
