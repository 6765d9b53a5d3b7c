#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace fettle {

/// The text without blanks, tabs, no-break spaces and line ends at both ends.
std::string_view trimmed(std::string_view text);

/// Reads the number at the start of [first, last): an optional sign, digits with at most one decimal
/// sign, an optional exponent. Independent of the locale, correctly rounded.
/// @return where reading stopped, or nullptr when there is no finite number ("nan" and "inf" are none)
const char* scanNumber(const char* first, const char* last, char decimalSign, double& value) noexcept;

/// The one number that fills the whole text; blanks around it, a leading '+' and the minus sign U+2212
/// are accepted. @return nothing when the text is anything else, or when the value is not finite
std::optional<double> numberFromText(std::string_view text, char decimalSign = '.');

/// A number typed by hand: decimal comma and decimal point both work, grouping of thousands is refused
/// because "1.234" may mean either. @return the number, or one sentence that says what is wrong
tl::expected<double, std::string> numberFromKeyboard(std::string_view text);

}  // namespace fettle
