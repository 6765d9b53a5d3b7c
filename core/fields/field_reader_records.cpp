#include "core/fields/field_reader.h"
#include "core/measure/text.h"

// Reads what only records have: values of settings, objects, lists and maps.

namespace fettle {

FieldReader FieldReader::ofRecords() {
  FieldReader reader;
  reader.m_saysPaths = true;
  return reader;
}

SettingValue FieldReader::value(const Field& field, const Json& value) {
  if (value.is_number() && std::isfinite(value.get<double>())) {
    return {value.get<double>(), {}};
  }
  if (value.is_string()) {
    return {std::nullopt, value.get<std::string>()};
  }
  if (!value.is_null()) {
    refuse(field, say(Text::tr("{0} is neither a number nor a text in quotes."), value.dump()));
  }
  return {};
}

Json FieldReader::object(const Field& field, const Json& value) {
  if (!value.is_object() && !value.is_null()) {
    refuse(field, Text::tr("an object in braces is needed."));
  }
  return value.is_object() ? value : Json::object();
}

void FieldReader::inside(const std::string& place, const std::function<void()>& read) {
  const std::string outer = m_prefix;
  m_prefix += place + ".";
  read();
  m_prefix = outer;
}

void FieldReader::eachOf(const Field& field, const Json& value,
                         const std::function<void(const Json&)>& record) {
  if (!value.is_array() && !value.is_null()) {
    refuse(field, Text::tr("a list in brackets is needed."));
    return;
  }
  std::size_t number = 0;
  for (const Json& one : value) {
    const std::string place = fmt::format("{}[{}]", field.key, ++number);
    if (one.is_object()) {
      inside(place, [&] { record(one); });
    } else {
      refuseAt(place, field, say(Text::tr("{0} is no object in braces."), one.dump()));
    }
  }
}

void FieldReader::eachNamed(const Field& field, const Json& value,
                            const std::function<void(const std::string&, const Json&)>& record) {
  if (!value.is_object() && !value.is_null()) {
    refuse(field, Text::tr("an object in braces is needed."));
    return;
  }
  const bool beginsWithValue = !field.columns.empty() && field.columns.front().kind == FieldKind::value;
  for (const auto& [name, given] : value.items()) {
    const bool alone = beginsWithValue && (given.is_number() || given.is_string());
    const Json one = alone ? Json{{field.columns.front().key, given}} : given;
    if (field.kind == FieldKind::map && !one.is_object()) {
      refuseAt(field.key + "." + name, field, say(Text::tr("{0} is no object in braces."), one.dump()));
    } else {
      inside(field.kind == FieldKind::map ? field.key + "." + name : field.key,
             [&, &named = name] { record(named, one); });
    }
  }
}

}  // namespace fettle
