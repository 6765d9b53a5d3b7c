#pragma once
#include <functional>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "core/fields/accepted_numbers.h"
#include "core/fields/field.h"
#include "core/fields/readings.h"
#include "core/measure/capture.h"
#include "core/measure/setting_value.h"

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

/// A value that cannot be accepted.
struct RefusedValue {
  std::string path;      ///< "points[2].reference_C"
  std::string sentence;  ///< what is wrong with it, where, and what would be accepted
};

/// Reads JSON values against fields and keeps what was blank and what was wrong. A path reads
/// "marks[2].nozzle_x", rows counted from 1.
class FieldReader {
 public:
  explicit FieldReader(InputFiles* files = nullptr) : m_files(files) {}
  /// Reads records: sentences name a field by its path, as it stands in the file.
  static FieldReader ofRecords();

  std::optional<double> number(const Field& field, const Json& value);
  std::optional<std::string> choice(const Field& field, const Json& value);
  std::optional<std::string> text(const Field& field, const Json& value);
  std::optional<bool> yesNo(const Field& field, const Json& value);
  GridReadings grid(const Field& field, const Json& value);
  std::vector<ChecklistAnswer> checklist(const Field& field, const Json& value);
  CapturePointer capture(const Field& field, const Json& value);
  SettingValue value(const Field& field, const Json& value);
  /// An object as it is, an empty one while blank.
  Json object(const Field& field, const Json& value);
  /// Lets `read` read one place further in: paths begin with "place.".
  void inside(const std::string& place, const std::function<void()>& read);
  /// Calls `record` for every object of an array, "runs[2]."
  void eachOf(const Field& field, const Json& value, const std::function<void(const Json&)>& record);
  /// Calls `record` for every member of an object, "as_found.x.pitch_mm."; a value alone stands for a
  /// record that begins with one.
  void eachNamed(const Field& field, const Json& value,
                 const std::function<void(const std::string&, const Json&)>& record);
  /// Calls `row` for every row that is not wholly blank; a single row may stand without its array. Excluded
  /// rows are read too, but what is blank or wrong in them does not count.
  void eachRow(const Field& field, const Json& value,
               const std::function<void(const Json&, TableRow)>& row);

  /// Values that cannot be accepted; each reads as blank.
  const std::vector<RefusedValue>& refusals() const { return m_refusals; }
  /// The first thing that is wrong, in one sentence.
  std::optional<std::string> problem() const;
  /// One sentence about the first file that could not be read.
  const std::optional<std::string>& fileProblem() const { return m_fileProblem; }
  /// Paths of needed fields that are blank, in order.
  const std::vector<std::string>& missing() const { return m_missing; }
  /// Keys in the input that no field has.
  const std::vector<std::string>& unknown() const { return m_unknown; }

  void refuse(const Field& field, const std::string& sentence);
  /// Whether the row just read counts: nothing in it is refused and no needed cell is blank.
  bool rowCounts() const { return !m_rowSpoiled; }
  /// Said of a table after its rows.
  void noteRows(const Field& table, bool none);
  bool hasNoRows(const Field& table) const { return m_withoutRows.count(m_prefix + table.key) > 0; }
  void noteMissing(const Field& field);
  void noteUnknown(const std::string& key, const std::vector<Field>& known);

 private:
  using OpenFile = tl::expected<Json, std::string> (InputFiles::*)(const Json&, const Field&);
  /// What a file holds that a value refers to, or the value itself; nothing when it was refused.
  std::optional<Json> opened(const Field& field, const Json& value, OpenFile open);
  std::string where(const Field& field) const;
  void refuseAt(const std::string& path, const Field& field, const std::string& sentence);
  void noteFileProblem(const Field& field, const std::string& sentence);

  InputFiles* m_files;
  std::string m_prefix;    ///< path of the enclosing row, "marks[2]."
  std::string m_rowLabel;  ///< the same in words, "Marks, row 2, "
  bool m_saysPaths = false;
  bool m_muted = false;  ///< inside an excluded row
  bool m_rowSpoiled = false;
  std::vector<RefusedValue> m_refusals;
  std::optional<std::string> m_fileProblem;
  std::set<std::string> m_withoutRows;
  std::vector<std::string> m_missing, m_unknown;
};

}  // namespace fettle
