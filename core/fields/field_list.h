#pragma once
#include <functional>
#include <map>
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
#include "core/measure/setting_value.h"
#include "core/measure/verdict.h"

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

/// The one place where the inputs of a step, or a record of the history, name their fields. A struct's
/// `describe(FieldList&)` calls one function per member; the list then knows the fields, can fill the
/// members from JSON, and can write those of a record.
///
/// To describe:  describedFields<Inputs>()
/// To read:      Inputs inputs; FieldList list; inputs.describe(list); list.read(json, reader)
/// To write:     recordToJson(record)
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

  // Of records.

  /// A word that stands for a value of an enumeration.
  template <typename Enum>
  FieldHandle choice(std::string key, Enum& member, std::string label,
                     std::vector<std::pair<Enum, Choice>> words);
  FieldHandle value(std::string key, SettingValue& member, std::string label);
  FieldHandle values(std::string key, SettingValues& member, std::string label);
  /// An object that is described elsewhere; kept as it is.
  FieldHandle object(std::string key, Json& member, std::string label);
  template <typename Record>
  FieldHandle list(std::string key, std::vector<Record>& member, std::string label);
  /// Where a record begins with a value, the value alone stands for it.
  template <typename Record>
  FieldHandle map(std::string key, std::map<std::string, Record>& member, std::string label);

  /// One of these fields is needed; while none serves, the one that was begun is missing, else the first.
  void oneOf(const std::vector<std::string>& keys);

  const std::vector<Field>& fields() const { return m_fields; }
  /// Fills the members from an object; what is blank or wrong is collected in the reader.
  void read(const Json& values, FieldReader& reader) const;
  /// The members as an object; what is blank and may be blank is left out. Throws std::logic_error for a
  /// capture, a grid or a checklist: no record has them.
  Json written() const;

 private:
  using Read = std::function<void(const Field&, const Json&, FieldReader&)>;
  using Write = std::function<Json()>;
  FieldHandle add(Field field, Read read, Write write = {});
  FieldHandle addRecords(FieldKind kind, std::string key, std::string label, std::vector<Field> columns,
                         Read read, Write write);
  void noteUnlessOneServes(const Field& field, const Json& values, const std::set<std::string>& filled,
                           FieldReader& reader) const;

  std::vector<Field> m_fields;
  std::vector<Read> m_reads;
  std::vector<Write> m_writes;
};

/// How a record names its fields: by its own describe, or as said here for types of core/measure.
template <typename Record>
void describeRecord(Record& record, FieldList& fields) {
  record.describe(fields);
}
void describeRecord(Instrument& instrument, FieldList& fields);
void describeRecord(Tolerance& tolerance, FieldList& fields);

/// The fields of an inputs struct, as it describes them.
template <typename Inputs>
std::vector<Field> describedFields() {
  Inputs example;
  FieldList list;
  describeRecord(example, list);
  return list.fields();
}

/// A record in the form of files.
template <typename Record>
Json recordToJson(Record record) {
  FieldList list;
  describeRecord(record, list);
  return list.written();
}

/// A record from the form of files; what is blank, refused or unknown is kept in the reader.
template <typename Record>
Record recordFromJson(const Json& json, FieldReader& reader) {
  Record record;
  FieldList list;
  describeRecord(record, list);
  list.read(json, reader);
  return record;
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

template <typename Enum>
FieldHandle FieldList::choice(std::string key, Enum& member, std::string label,
                              std::vector<std::pair<Enum, Choice>> words) {
  Field field;
  field.key = std::move(key);
  field.label = std::move(label);
  field.kind = FieldKind::choice;
  for (const auto& [value, choice] : words) {
    field.choices.push_back(choice);
    if (value == member) {
      field.fallback = choice.key;
    }
  }
  const auto read = [&member, words](const Field& f, const Json& value, FieldReader& reader) {
    const auto given = reader.choice(f, value);
    for (const auto& [known, choice] : words) {
      member = given == choice.key ? known : member;
    }
  };
  const auto write = [&member, words] {
    for (const auto& [known, choice] : words) {
      if (known == member) {
        return Json(choice.key);
      }
    }
    return Json();
  };
  return add(std::move(field), read, write);
}

template <typename Record>
FieldHandle FieldList::list(std::string key, std::vector<Record>& member, std::string label) {
  const auto read = [&member](const Field& f, const Json& value, FieldReader& reader) {
    member.clear();
    reader.eachOf(f, value,
                  [&](const Json& one) { member.push_back(recordFromJson<Record>(one, reader)); });
  };
  const auto write = [&member] {
    Json all = Json::array();
    for (const auto& one : member) {
      all.push_back(recordToJson(one));
    }
    return all;
  };
  return addRecords(FieldKind::list, std::move(key), std::move(label), describedFields<Record>(), read,
                    write);
}

template <typename Record>
FieldHandle FieldList::map(std::string key, std::map<std::string, Record>& member, std::string label) {
  const auto read = [&member](const Field& f, const Json& value, FieldReader& reader) {
    member.clear();
    reader.eachNamed(f, value, [&](const std::string& name, const Json& one) {
      member[name] = recordFromJson<Record>(one, reader);
    });
  };
  const auto write = [&member] {
    Json all = Json::object();
    for (const auto& [name, one] : member) {
      all[name] = recordToJson(one);
    }
    return all;
  };
  return addRecords(FieldKind::map, std::move(key), std::move(label), describedFields<Record>(), read,
                    write);
}

}  // namespace fettle
