#pragma once
#include <functional>
#include <optional>
#include <set>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "core/fields/field.h"
#include "core/fields/field_reader.h"
#include "core/fields/readings.h"
#include "core/measure/capture.h"

namespace fettle {

class FieldList;

/// Refines the field just declared; every function returns the same object.
class FieldHandle {
 public:
  explicit FieldHandle(Field& field) : m_field(&field) {}
  FieldHandle& bounds(double minimum, double maximum);
  FieldHandle& atLeast(double minimum);
  FieldHandle& required();
  /// Required only while another field of the same list or row has one of these values.
  FieldHandle& requiredWhen(std::string field, std::vector<std::string> values);
  FieldHandle& whole();
  FieldHandle& help(std::string sentence);
  FieldHandle& readWith(Instrument instrument);
  FieldHandle& onlyWhen(std::string field, std::vector<std::string> values);
  FieldHandle& alsoNamed(std::vector<std::string> headerWords);
  /// Shown under this heading; `folded` while it and its like hold nothing.
  FieldHandle& inGroup(std::string heading, bool folded = false);
  /// A rarely used column.
  FieldHandle& folded();
  /// Set-up, not a reading: a new run begins with the value of the run before.
  FieldHandle& carriesOver();
  /// While blank the value comes from there; the form shows it with its origin.
  FieldHandle& blankFrom(Origin::Place place, std::string key);

 private:
  Field* m_field;
};

/// The one place where an inputs struct names its fields. A struct's `describe(FieldList&)` calls one
/// function per member; the list then knows the fields and can fill the members from JSON.
///
/// To describe:  describedFields<Inputs>()
/// To read:      Inputs inputs; FieldList list; inputs.describe(list); list.read(json, reader)
/// A row of a table with a needed cell blank or a cell refused is left out, so the cells a row requires are
/// there in every row. Outside of rows a number that is refused reads as NaN: nothing is computed from a
/// guess, and what is not finite is never given. The members must outlive the list when it reads.
class FieldList {
 public:
  /// A number that is always there; the member's first value is what counts while blank.
  FieldHandle number(std::string key, double& member, std::string label, std::string unit);
  /// A number that may be blank.
  FieldHandle number(std::string key, std::optional<double>& member, std::string label, std::string unit);
  /// One of several words; the member's first value counts while blank ("" for none).
  FieldHandle choice(std::string key, std::string& member, std::string label, std::vector<Choice> choices);
  FieldHandle text(std::string key, std::string& member, std::string label);
  FieldHandle yesNo(std::string key, std::optional<bool>& member, std::string label);
  FieldHandle grid(std::string key, GridReadings& member, std::string label, std::string unit);
  FieldHandle checklist(std::string key, std::vector<ChecklistAnswer>& member, std::string label,
                        std::vector<Choice> items);
  /// A file whose columns are described by `columns`; an empty pointer while none was chosen.
  FieldHandle capture(std::string key, CapturePointer& member, std::string label,
                      const std::function<void(FieldList&)>& columns);
  /// Declares a column of a capture; it has no member, the capture holds its values.
  FieldHandle column(std::string key, std::string label, std::string unit);
  /// A table of rows. Row derives from TableRow and has its own describe(FieldList&), one field a column.
  template <typename Row>
  FieldHandle table(std::string key, std::vector<Row>& member, std::string label);

  /// One of these fields is needed; while none serves, the one that was begun is missing, else the first.
  void oneOf(const std::vector<std::string>& keys);

  const std::vector<Field>& fields() const { return m_fields; }
  /// Fills the members from an object; what is blank or wrong is collected in the reader.
  void read(const Json& values, FieldReader& reader) const;

 private:
  using Read = std::function<void(const Field&, const Json&, FieldReader&)>;
  FieldHandle add(Field field, Read read);
  void noteUnlessOneServes(const Field& field, const Json& values, const std::set<std::string>& filled,
                           FieldReader& reader) const;

  std::vector<Field> m_fields;
  std::vector<Read> m_reads;
};

/// The fields of an inputs struct, as it describes them.
template <typename Inputs>
std::vector<Field> describedFields() {
  Inputs example;
  FieldList list;
  example.describe(list);
  return list.fields();
}

template <typename Row>
FieldHandle FieldList::table(std::string key, std::vector<Row>& member, std::string label) {
  static_assert(std::is_base_of_v<TableRow, Row>, "a row of a table derives from TableRow");
  Field field;
  field.key = std::move(key);
  field.label = std::move(label);
  field.kind = FieldKind::table;
  field.columns = describedFields<Row>();
  return add(std::move(field), [&member](const Field& table, const Json& value, FieldReader& reader) {
    member.clear();
    reader.eachRow(table, value, [&](const Json& cells, TableRow common) {
      Row row;
      static_cast<TableRow&>(row) = std::move(common);
      FieldList bound;
      row.describe(bound);
      bound.read(cells, reader);
      if (reader.rowCounts()) {
        member.push_back(std::move(row));
      }
    });
    reader.noteRows(table, member.empty() || included(member).empty());
  });
}

}  // namespace fettle
