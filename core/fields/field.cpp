#include "core/fields/field.h"

#include <algorithm>

namespace fettle {

std::string fieldKindKey(FieldKind kind) {
  switch (kind) {
    case FieldKind::number:
      return "number";
    case FieldKind::choice:
      return "choice";
    case FieldKind::text:
      return "text";
    case FieldKind::yesNo:
      return "yes-no";
    case FieldKind::table:
      return "table";
    case FieldKind::grid:
      return "grid";
    case FieldKind::capture:
      return "capture";
    case FieldKind::checklist:
      return "checklist";
    case FieldKind::value:
      return "value";
    case FieldKind::values:
      return "values";
    case FieldKind::object:
      return "object";
    case FieldKind::list:
      return "list";
    case FieldKind::map:
      return "map";
  }
  return {};
}

const Field* findField(const std::vector<Field>& fields, const std::string& key) {
  const auto found =
      std::find_if(fields.begin(), fields.end(), [&](const Field& f) { return f.key == key; });
  return found == fields.end() ? nullptr : &*found;
}

bool holds(const Condition& condition, const Json& values, const std::vector<Field>& siblings) {
  Json actual;
  if (const auto found = values.find(condition.field); found != values.end()) {
    actual = *found;
  }
  if (actual.is_null()) {
    const Field* other = findField(siblings, condition.field);
    actual = other ? other->fallback : Json();
  }
  const auto& wanted = condition.values;
  return actual.is_string() &&
         std::find(wanted.begin(), wanted.end(), actual.get_ref<const std::string&>()) != wanted.end();
}

bool applies(const Field& field, const Json& values, const std::vector<Field>& siblings) {
  return !field.condition || holds(*field.condition, values, siblings);
}

bool isRequired(const Field& field, const Json& values, const std::vector<Field>& siblings) {
  return field.required || (field.requiredWhen && holds(*field.requiredWhen, values, siblings));
}

}  // namespace fettle
