#pragma once
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "core/fields/accepted_numbers.h"
#include "core/fields/field.h"
#include "core/fields/readings.h"
#include "core/measure/capture.h"

namespace fettle {

/// Opens what inputs refer to by {"file": ...}. Core's implementation is made of intake; steps know only
/// this door. Whatever is wrong with a reference is an error, which is one sentence.
class InputFiles {
 public:
  virtual ~InputFiles() = default;
  virtual tl::expected<CapturePointer, std::string> capture(const Json& reference, const Field& field) = 0;
  /// Rows of a table as an array of objects keyed by column.
  virtual tl::expected<Json, std::string> table(const Json& reference, const Field& field) = 0;
  /// A grid as {"x": [...], "y": [...], "z": [[...]]}.
  virtual tl::expected<Json, std::string> grid(const Json& reference, const Field& field) = 0;
};

/// Whether two words are the same but for their case, as people write them.
bool isSameWord(std::string_view first, std::string_view second);
/// What "yes", "No" or "TRUE" says; nothing for any other word.
std::optional<bool> yesNoFromWord(std::string_view word);

bool isBlankValue(const Json& value);
bool isNumberList(const Json& value);
/// The numbers that a field accepts.
AcceptedNumbers numbersOf(const Field& field);

/// Reads JSON values against fields and keeps what was blank and the first thing that was wrong.
/// A path reads "marks[2].nozzle_x", rows counted from 1.
class FieldReader {
 public:
  explicit FieldReader(InputFiles* files = nullptr) : m_files(files) {}

  std::optional<double> number(const Field& field, const Json& value);
  std::optional<std::string> choice(const Field& field, const Json& value);
  std::optional<std::string> text(const Field& field, const Json& value);
  std::optional<bool> yesNo(const Field& field, const Json& value);
  GridReadings grid(const Field& field, const Json& value);
  std::vector<ChecklistAnswer> checklist(const Field& field, const Json& value);
  CapturePointer capture(const Field& field, const Json& value);
  /// Calls `row` for every row that is not wholly blank; a single row may stand without its array. Excluded
  /// rows are read too, but what is blank or wrong in them does not count.
  void eachRow(const Field& field, const Json& value,
               const std::function<void(const Json&, TableRow)>& row);

  /// One sentence on the first thing that cannot be accepted.
  const std::optional<std::string>& problem() const { return m_problem; }
  /// Paths of needed fields that are blank, in order.
  const std::vector<std::string>& missing() const { return m_missing; }
  /// Keys in the input that no field has.
  const std::vector<std::string>& unknown() const { return m_unknown; }

  void refuse(const Field& field, const std::string& sentence);
  void noteMissing(const Field& field);
  void noteUnknown(const std::string& key);

 private:
  using OpenFile = tl::expected<Json, std::string> (InputFiles::*)(const Json&, const Field&);
  /// What a file holds that a value refers to, or the value itself; nothing when it was refused.
  std::optional<Json> opened(const Field& field, const Json& value, OpenFile open);
  std::string where(const Field& field) const;

  InputFiles* m_files;
  std::string m_prefix;    ///< path of the enclosing row, "marks[2]."
  std::string m_rowLabel;  ///< the same in words, "Marks, row 2, "
  bool m_muted = false;    ///< inside an excluded row
  std::optional<std::string> m_problem;
  std::vector<std::string> m_missing, m_unknown;
};

}  // namespace fettle
