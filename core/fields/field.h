#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/measure/instrument.h"
#include "core/measure/json.h"

namespace fettle {

enum class FieldKind {
  number,
  choice,
  text,
  yesNo,
  table,
  grid,
  capture,
  checklist,
  // Of records only:
  value,   ///< a number or a word, of a setting
  values,  ///< such values by name
  object,  ///< described elsewhere: the inputs of a step
  list,    ///< records one after another
  map      ///< records by name
};

/// The word of a kind in files: "number", "choice", "text", "yes-no", "table", "grid", "capture",
/// "checklist", "value", "values", "object", "list", "map".
std::string fieldKindKey(FieldKind kind);

struct Choice {
  std::string key;    ///< as stored
  std::string label;  ///< as shown
};

/// A field shows and counts only while another field of the same list or row has one of these values.
struct Condition {
  std::string field;
  std::vector<std::string> values;
};

/// Where a blank field gets its value from.
struct Origin {
  enum class Place { sheet, session, ledger, acceptedResult };
  Place place = Place::sheet;
  std::string key;  ///< of the sheet, the session or the setting; "step.result" of an accepted result
};

/// What is known of one input: the form, the checks, the files and the report are made from this.
struct Field {
  std::string key;
  std::string label;
  FieldKind kind = FieldKind::number;
  std::string unit;  ///< unit key; empty for kinds without one
  std::optional<double> minimum, maximum;
  std::vector<Choice> choices;
  std::vector<Field> columns;             ///< of a table, capture, list or map; items of a checklist
  bool required = false;                  ///< blank: the row is left out, or the step waits for it
  std::optional<Condition> requiredWhen;  ///< required only while another field has one of these values
  std::vector<std::string> alternatives;  ///< keys of the fields that serve as well as this one
  bool whole = false;                     ///< a number without decimals
  std::string help;                       ///< one sentence
  Json fallback;                          ///< value while blank; null: none
  std::optional<Instrument> instrument;
  std::optional<Condition> condition;
  std::vector<std::string> aliases;  ///< header words under which files bring this column
  std::string group;                 ///< heading under which a form shows it; empty: none
  bool folded = false;               ///< its group is folded until it holds something; a rarely used column
  bool carriesOver = false;          ///< set-up, not a reading: a new run begins with its value
  std::optional<Origin> blankFrom;   ///< where the value comes from while it is blank
};

/// The field of that key, or null.
const Field* findField(const std::vector<Field>& fields, const std::string& key);

/// Whether the condition holds beside these values.
bool holds(const Condition& condition, const Json& values, const std::vector<Field>& siblings);
/// Whether the field counts beside these values.
bool applies(const Field& field, const Json& values, const std::vector<Field>& siblings);

/// Whether the field must not be blank beside these values.
bool isRequired(const Field& field, const Json& values, const std::vector<Field>& siblings);

}  // namespace fettle
