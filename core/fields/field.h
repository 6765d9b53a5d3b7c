#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/measure/instrument.h"
#include "core/measure/json.h"

namespace fettle {

enum class FieldKind { number, choice, text, yesNo, table, grid, capture, checklist };

/// The word of a kind in files: "number", "choice", "text", "yes-no", "table", "grid", "capture",
/// "checklist".
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

/// What is known of one input: the form, the checks, the files and the report are made from this.
struct Field {
  std::string key;
  std::string label;
  FieldKind kind = FieldKind::number;
  std::string unit;  ///< unit key; empty for kinds without one
  std::optional<double> minimum, maximum;
  std::vector<Choice> choices;
  std::vector<Field> columns;  ///< of a table or capture; items of a checklist
  bool required = false;       ///< blank: the step is incomplete
  bool whole = false;          ///< a number without decimals
  std::string help;            ///< one sentence
  Json fallback;               ///< value while blank; null: none
  std::optional<Instrument> instrument;
  std::optional<Condition> condition;
  std::vector<std::string> aliases;  ///< header words under which files bring this column
};

/// The field of that key, or null.
const Field* findField(const std::vector<Field>& fields, const std::string& key);

/// Whether the field counts beside these values.
bool applies(const Field& field, const Json& values, const std::vector<Field>& siblings);

}  // namespace fettle
