#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace fettle {

/// Why a text was refused: one sentence that says what is wrong, where, and what would be right.
struct IntakeError {
  std::string sentence;
  std::size_t line = 0;    ///< from 1; 0 when no line is to blame
  std::size_t column = 0;  ///< from 1; 0 when no column is to blame
  bool cancelled = false;  ///< the user stopped the reading; nothing is wrong with the text
};

template <class T>
using Intake = tl::expected<T, IntakeError>;

/// A cell: line and column from 1, the header when there is one.
struct CellPlace {
  std::size_t line = 0;
  std::size_t column = 0;
  std::string_view header;
};

/// All wording of this folder, one function per kind of refusal.
namespace refusal {

using Error = tl::unexpected<IntakeError>;

Error cancelled();
Error cannotOpen(std::string_view path);
Error empty();
Error notText();
Error noNumbers();
Error openQuote(std::size_t line);
Error notANumber(const CellPlace& place, std::string_view text, char decimalSign);
Error notAClockTime(const CellPlace& place, std::string_view text);
Error emptyCell(const CellPlace& place);
Error tooLarge(const CellPlace& place);
Error cellCount(std::size_t line, std::size_t found, std::size_t expected, bool lastLine);
Error noRows();

Error noHeader(std::string_view keys, std::size_t columns);
Error noColumn(std::string_view key, std::string_view label, std::string_view headers);
Error noSuchColumn(std::string_view key, std::string_view wanted, std::string_view headers);
Error noSuchColumnNumber(std::string_view key, std::string_view number, std::size_t columns);
Error unknownKey(std::string_view key, std::string_view keys);
Error ambiguousColumn(std::string_view key, std::string_view headers);
Error columnTwice(std::size_t column, std::string_view keyA, std::string_view keyB);
Error unknownUnit(std::string_view key, std::string_view unit, std::string_view possible);
Error wrongUnit(std::string_view key, std::string_view unit, std::string_view possible);
Error clockUnit(std::string_view key, bool columnIsClock);
Error columnOfWords(std::string_view key, const CellPlace& place, std::string_view text);

Error noTimeColumn(std::string_view key);
Error tooFewRows(std::size_t found, std::size_t needed);
Error timeNotRising(std::size_t line, double before, double after);

Error gridTooSmall(std::size_t rows, std::size_t columns);
Error gridAxisMissing(char axis, std::size_t count);
Error gridAxisLength(char axis, std::size_t given, std::size_t needed);
Error gridAxisOrder(char axis, double before, double after);
Error gridAxisNotFinite(char axis);

}  // namespace refusal
}  // namespace fettle
