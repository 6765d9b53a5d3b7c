#include "core/fields/json_schema.h"

namespace fettle {
namespace {

Json numberSchema(const Field& field) {
  Json schema = {{"type", {field.whole ? "integer" : "number", "null"}}};
  if (field.minimum) {
    schema["minimum"] = *field.minimum;
  }
  if (field.maximum) {
    schema["maximum"] = *field.maximum;
  }
  return schema;
}

Json choiceSchema(const Field& field) {
  Json words = Json::array();
  for (const auto& choice : field.choices) {
    words.push_back(choice.key);
  }
  words.push_back(nullptr);
  return {{"enum", words}};
}

Json listSchema(const Field& field) {
  return {{"type", {"array", "null"}}, {"items", schemaOf(field.columns)}};
}

/// A value alone stands for a record that begins with one.
Json mapSchema(const Field& field) {
  Json record = schemaOf(field.columns);
  if (!field.columns.empty() && field.columns.front().kind == FieldKind::value) {
    record = {{"anyOf", {{{"type", {"number", "string"}}}, record}}};
  }
  return {{"type", {"object", "null"}}, {"additionalProperties", record}};
}

Json schemaOf(const Field& field) {
  switch (field.kind) {
    case FieldKind::number:
      return numberSchema(field);
    case FieldKind::choice:
      return choiceSchema(field);
    case FieldKind::yesNo:
      return {{"type", {"boolean", "string", "null"}}};
    case FieldKind::value:
      return {{"type", {"number", "string", "null"}}};
    case FieldKind::values:
      return {{"type", {"object", "null"}}, {"additionalProperties", {{"type", {"number", "string"}}}}};
    case FieldKind::list:
    case FieldKind::table:
      return listSchema(field);
    case FieldKind::map:
      return mapSchema(field);
    case FieldKind::text:
      return {{"type", {"string", "number", "null"}}};
    default:
      return {{"type", {"object", "null"}}};
  }
}

}  // namespace

Json schemaOf(const std::vector<Field>& fields) {
  Json schema = {{"type", "object"}, {"additionalProperties", false}, {"properties", Json::object()}};
  for (const auto& field : fields) {
    Json one = schemaOf(field);
    one["description"] = field.help.empty() ? field.label : field.label + ": " + field.help;
    schema["properties"][field.key] = std::move(one);
    if (field.required) {
      schema["required"].push_back(field.key);
    }
  }
  return schema;
}

}  // namespace fettle
