#include "core/intake/intake_error.h"

#include <utility>

#include "core/intake/utf8.h"
#include "core/measure/text.h"

namespace fettle::refusal {
namespace {

Error refuse(std::string sentence, std::size_t line = 0, std::size_t column = 0) {
  return Error(IntakeError{std::move(sentence), line, column, false});
}

std::string where(const CellPlace& place) {
  return place.header.empty() ? say(Text::tr("Line {0}, column {1}"), place.line, place.column)
                              : say(Text::tr("Line {0}, column {1} ({2})"), place.line, place.column,
                                    shownText(place.header));
}

}  // namespace

Error cancelled() {
  return Error(IntakeError{say(Text::tr("Reading was stopped.")), 0, 0, true});
}

Error cannotOpen(std::string_view path) {
  return refuse(
      say(Text::tr("The file \"{0}\" cannot be read; check that it exists and may be opened."), path));
}

Error empty() {
  return refuse(
      say(Text::tr("There is no text to read; a table with one row of numbers per line is needed.")));
}

Error notText() {
  return refuse(
      say(Text::tr("This is not a text table but binary data; a plain text of numbers is needed, such as "
                   "comma-separated values.")));
}

Error noNumbers() {
  return refuse(
      say(Text::tr("No row of numbers was found; a table has one reading per line, its columns parted by "
                   "commas, semicolons, tabs or blanks.")));
}

Error openQuote(std::size_t line) {
  return refuse(
      say(Text::tr(
              "Line {0} has a quotation mark that is not closed on the same line; close or remove it."),
          line),
      line);
}

Error notANumber(const CellPlace& place, std::string_view text, char decimalSign) {
  return refuse(
      decimalSign == ','
          ? say(Text::tr(
                    "{0}: \"{1}\" is not a number; digits with a decimal comma are needed, such as 12,5."),
                where(place), shownText(text))
          : say(Text::tr(
                    "{0}: \"{1}\" is not a number; digits with a decimal point are needed, such as 12.5."),
                where(place), shownText(text)),
      place.line, place.column);
}

Error notAClockTime(const CellPlace& place, std::string_view text) {
  return refuse(say(Text::tr("{0}: \"{1}\" is not a clock time; hours, minutes and seconds are needed, "
                             "such as 14:05:00.5."),
                    where(place), shownText(text)),
                place.line, place.column);
}

Error emptyCell(const CellPlace& place) {
  return refuse(say(Text::tr("{0} is empty; a number is needed."), where(place)), place.line, place.column);
}

Error tooLarge(const CellPlace& place) {
  return refuse(say(Text::tr("{0} holds a number too large to convert; check the column and its unit."),
                    where(place)),
                place.line, place.column);
}

Error cellCount(std::size_t line, std::size_t found, std::size_t expected, bool lastLine) {
  return refuse(lastLine
                    ? say(Text::tr("Line {0}, the last, has {1} cells where the table has {2} columns; the "
                                   "text seems to be cut off there, complete or remove the line."),
                          line, found, expected)
                    : say(Text::tr("Line {0} has {1} cells where the table has {2} columns; every row "
                                   "needs the same number."),
                          line, found, expected),
                line);
}

Error noRows() {
  return refuse(say(Text::tr("The table has a header but no row of numbers; at least one row is needed.")));
}

Error noHeader(std::string_view keys, std::size_t columns) {
  return refuse(
      say(Text::tr("The table has no header; say which of its {0} columns is {1}, by number from 1."),
          columns, keys));
}

Error noColumn(std::string_view key, std::string_view label, std::string_view headers) {
  const std::string name =
      label.empty() || label == key ? std::string(key) : std::string(key) + " (" + std::string(label) + ")";
  return refuse(say(Text::tr("No column was recognised as {0}; name it so or say which one it is: {1}."),
                    name, headers));
}

Error noSuchColumn(std::string_view key, std::string_view wanted, std::string_view headers) {
  return refuse(say(Text::tr("There is no column \"{0}\" to take {1} from; the columns are {2}."),
                    shownText(wanted), key, headers));
}

Error noSuchColumnNumber(std::string_view key, std::string_view number, std::size_t columns) {
  return refuse(say(Text::tr("There is no column {0} to take {1} from; columns are numbered 1 to {2}."),
                    number, key, columns));
}

Error unknownKey(std::string_view key, std::string_view keys) {
  return refuse(
      say(Text::tr("\"{0}\" is not a column asked for here; possible are {1}."), shownText(key), keys));
}

Error ambiguousColumn(std::string_view key, std::string_view headers) {
  return refuse(say(Text::tr("More than one column may be {0}: {1}; say which one by its number from 1."),
                    key, headers));
}

Error columnTwice(std::size_t column, std::string_view keyA, std::string_view keyB) {
  return refuse(say(Text::tr("Column {0} is given both as {1} and as {2}; each needs a column of its own."),
                    column, keyA, keyB),
                0, column);
}

Error unknownUnit(std::string_view key, std::string_view unit, std::string_view possible) {
  return refuse(say(Text::tr("The unit \"{0}\" of {1} is not known; possible are {2}."), shownText(unit),
                    key, possible));
}

Error wrongUnit(std::string_view key, std::string_view unit, std::string_view possible) {
  return refuse(say(Text::tr("The unit \"{0}\" does not suit {1}; possible are {2}."), shownText(unit), key,
                    possible));
}

Error clockUnit(std::string_view key, bool columnIsClock) {
  return refuse(
      columnIsClock
          ? say(Text::tr("The column for {0} holds clock times such as 14:05:00; its unit must be clock."),
                key)
          : say(Text::tr("The column for {0} is said to hold clock times, but it holds plain numbers; say "
                         "s, ms or us."),
                key));
}

Error columnOfWords(std::string_view key, const CellPlace& place, std::string_view text) {
  return refuse(
      text.empty()
          ? say(Text::tr("{0}: the column for {1} is empty; numbers are needed."), where(place), key)
          : say(Text::tr("{0}: the column for {1} holds words such as \"{2}\"; numbers are needed."),
                where(place), key, shownText(text)),
      place.line, place.column);
}

Error noTimeColumn(std::string_view key) {
  return refuse(say(Text::tr("A capture needs the column {0}."), key));
}

Error tooFewRows(std::size_t found, std::size_t needed) {
  return refuse(say(Text::tr("The capture has {0} rows; at least {1} are needed."), found, needed));
}

Error timeNotRising(std::size_t line, double before, double after) {
  return refuse(say(Text::tr("Line {0}: time must run forwards, but {2:.9g} s follows {1:.9g} s; each row "
                             "must be later than the one before."),
                    line, before, after),
                line);
}

Error gridTooSmall(std::size_t rows, std::size_t columns) {
  return refuse(
      say(Text::tr("The grid has {0} rows and {1} columns of heights; at least 2 of each are needed."),
          rows, columns));
}

Error gridAxisMissing(char axis, std::size_t count) {
  return refuse(say(Text::tr("The grid does not say where it was measured; give its {0} positions of {1}."),
                    count, axis));
}

Error gridAxisLength(char axis, std::size_t given, std::size_t needed) {
  return refuse(
      say(Text::tr("{0} positions of {1} are given, but the grid has {2}."), given, axis, needed));
}

Error gridAxisOrder(char axis, double before, double after) {
  return refuse(say(Text::tr("The positions of {0} must all rise or all fall; {1:.6g} follows {2:.6g}."),
                    axis, after, before));
}

Error gridAxisNotFinite(char axis) {
  return refuse(say(Text::tr("The positions of {0} must be numbers."), axis));
}

}  // namespace fettle::refusal
