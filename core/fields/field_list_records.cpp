#include <stdexcept>

#include "core/fields/field_list.h"
#include "core/measure/text.h"

// What only records have: values of settings, objects, lists and maps; and writing.

namespace fettle {
namespace {

Json jsonOf(const SettingValue& value) {
  return value.number ? Json(*value.number) : Json(value.text);
}

Field recordField(FieldKind kind, std::string key, std::string label) {
  Field field;
  field.kind = kind;
  field.key = std::move(key);
  field.label = std::move(label);
  return field;
}

}  // namespace

FieldHandle FieldList::value(std::string key, SettingValue& member, std::string label) {
  return add(
      recordField(FieldKind::value, std::move(key), std::move(label)),
      [&member](const Field& f, const Json& value, FieldReader& reader) {
        member = reader.value(f, value);
      },
      [&member] { return jsonOf(member); });
}

FieldHandle FieldList::values(std::string key, SettingValues& member, std::string label) {
  const auto read = [&member](const Field& f, const Json& value, FieldReader& reader) {
    member.clear();
    reader.eachNamed(f, value, [&](const std::string& name, const Json& one) {
      member[name] = reader.value(recordField(FieldKind::value, name, name), one);
    });
  };
  const auto write = [&member] {
    Json all = Json::object();
    for (const auto& [name, value] : member) {
      all[name] = jsonOf(value);
    }
    return all;
  };
  return add(recordField(FieldKind::values, std::move(key), std::move(label)), read, write);
}

FieldHandle FieldList::object(std::string key, Json& member, std::string label) {
  return add(
      recordField(FieldKind::object, std::move(key), std::move(label)),
      [&member](const Field& f, const Json& value, FieldReader& reader) {
        member = reader.object(f, value);
      },
      [&member] { return member; });
}

FieldHandle FieldList::addRecords(FieldKind kind, std::string key, std::string label,
                                  std::vector<Field> columns, Read read, Write write) {
  Field field = recordField(kind, std::move(key), std::move(label));
  field.columns = std::move(columns);
  return add(std::move(field), std::move(read), std::move(write));
}

Json FieldList::written() const {
  Json json = Json::object();
  for (std::size_t i = 0; i < m_fields.size(); ++i) {
    if (!m_writes[i]) {
      throw std::logic_error("no record holds a field of the kind of " + m_fields[i].key);
    }
    Json value = m_writes[i]();
    const bool isBlank = isBlankValue(value) || (value.is_object() && value.empty());
    if (!isBlank || m_fields[i].required) {
      json[m_fields[i].key] = std::move(value);
    }
  }
  return json;
}

void describeRecord(Instrument& instrument, FieldList& fields) {
  fields.text("name", instrument.name, Text::tr("Name")).required();
  fields.number("r", instrument.r, Text::tr("Resolution"), "").atLeast(0).required();
  fields.number("e", instrument.e, Text::tr("Limit of error ±"), "").atLeast(0).required();
  fields.number("relative", instrument.relativeError, Text::tr("± of the reading"), "").atLeast(0);
  fields.text("unit", instrument.unit, Text::tr("Unit"));
  fields.text("identification", instrument.identification, Text::tr("Serial or inventory number"));
  fields.text("calibrated_on", instrument.calibratedOn, Text::tr("Calibrated on"));
}

void describeRecord(Tolerance& tolerance, FieldList& fields) {
  fields.number("low", tolerance.low, Text::tr("At least"), "");
  fields.number("high", tolerance.high, Text::tr("At most"), "");
}

}  // namespace fettle
