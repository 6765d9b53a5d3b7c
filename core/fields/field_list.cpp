#include "core/fields/field_list.h"

namespace fettle {
namespace {

Field makeField(FieldKind kind, std::string key, std::string label, std::string unit = {}) {
  Field field;
  field.kind = kind;
  field.key = std::move(key);
  field.label = std::move(label);
  field.unit = std::move(unit);
  return field;
}

}  // namespace

FieldHandle& FieldHandle::bounds(double minimum, double maximum) {
  m_field->minimum = minimum;
  m_field->maximum = maximum;
  return *this;
}

FieldHandle& FieldHandle::atLeast(double minimum) {
  m_field->minimum = minimum;
  return *this;
}

FieldHandle& FieldHandle::required() {
  m_field->required = true;
  return *this;
}

FieldHandle& FieldHandle::whole() {
  m_field->whole = true;
  return *this;
}

FieldHandle& FieldHandle::help(std::string sentence) {
  m_field->help = std::move(sentence);
  return *this;
}

FieldHandle& FieldHandle::readWith(Instrument instrument) {
  m_field->instrument = std::move(instrument);
  return *this;
}

FieldHandle& FieldHandle::onlyWhen(std::string field, std::vector<std::string> values) {
  m_field->condition = Condition{std::move(field), std::move(values)};
  return *this;
}

FieldHandle& FieldHandle::alsoNamed(std::vector<std::string> headerWords) {
  m_field->aliases = std::move(headerWords);
  return *this;
}

FieldHandle FieldList::add(Field field, Read read) {
  m_fields.push_back(std::move(field));
  m_reads.push_back(std::move(read));
  return FieldHandle(m_fields.back());
}

FieldHandle FieldList::number(std::string key, double& member, std::string label, std::string unit) {
  Field field = makeField(FieldKind::number, std::move(key), std::move(label), std::move(unit));
  field.fallback = member;
  return add(std::move(field), [&member](const Field& f, const Json& value, FieldReader& reader) {
    member = reader.number(f, value).value_or(member);
  });
}

FieldHandle FieldList::number(std::string key, std::optional<double>& member, std::string label,
                              std::string unit) {
  Field field = makeField(FieldKind::number, std::move(key), std::move(label), std::move(unit));
  return add(std::move(field), [&member](const Field& f, const Json& value, FieldReader& reader) {
    member = reader.number(f, value);
  });
}

FieldHandle FieldList::choice(std::string key, std::string& member, std::string label,
                              std::vector<Choice> choices) {
  Field field = makeField(FieldKind::choice, std::move(key), std::move(label));
  field.choices = std::move(choices);
  if (!member.empty()) {
    field.fallback = member;
  }
  return add(std::move(field), [&member](const Field& f, const Json& value, FieldReader& reader) {
    member = reader.choice(f, value).value_or(member);
  });
}

FieldHandle FieldList::text(std::string key, std::string& member, std::string label) {
  Field field = makeField(FieldKind::text, std::move(key), std::move(label));
  return add(std::move(field), [&member](const Field& f, const Json& value, FieldReader& reader) {
    member = reader.text(f, value).value_or("");
  });
}

FieldHandle FieldList::yesNo(std::string key, std::optional<bool>& member, std::string label) {
  Field field = makeField(FieldKind::yesNo, std::move(key), std::move(label));
  return add(std::move(field), [&member](const Field& f, const Json& value, FieldReader& reader) {
    member = reader.yesNo(f, value);
  });
}

FieldHandle FieldList::grid(std::string key, GridReadings& member, std::string label, std::string unit) {
  Field field = makeField(FieldKind::grid, std::move(key), std::move(label), std::move(unit));
  return add(std::move(field), [&member](const Field& f, const Json& value, FieldReader& reader) {
    member = reader.grid(f, value);
  });
}

FieldHandle FieldList::checklist(std::string key, std::vector<ChecklistAnswer>& member, std::string label,
                                 std::vector<Choice> items) {
  Field field = makeField(FieldKind::checklist, std::move(key), std::move(label));
  field.choices = std::move(items);
  return add(std::move(field), [&member](const Field& f, const Json& value, FieldReader& reader) {
    member = reader.checklist(f, value);
  });
}

FieldHandle FieldList::capture(std::string key, CapturePointer& member, std::string label,
                               const std::function<void(FieldList&)>& columns) {
  Field field = makeField(FieldKind::capture, std::move(key), std::move(label));
  FieldList described;
  columns(described);
  field.columns = described.fields();
  return add(std::move(field), [&member](const Field& f, const Json& value, FieldReader& reader) {
    member = reader.capture(f, value);
  });
}

FieldHandle FieldList::column(std::string key, std::string label, std::string unit) {
  return add(makeField(FieldKind::number, std::move(key), std::move(label), std::move(unit)),
             [](const Field&, const Json&, FieldReader&) {});
}

void FieldList::read(const Json& values, FieldReader& reader) const {
  static const Json blank;
  for (std::size_t i = 0; i < m_fields.size(); ++i) {
    const Field& field = m_fields[i];
    const auto found = values.find(field.key);
    const bool counts = applies(field, values, m_fields);
    m_reads[i](field, found != values.end() && counts ? *found : blank, reader);
    if (!counts && found != values.end() && field.kind == FieldKind::number && !found->is_number()) {
      reader.number(field, *found);  // what does not count now must still be a number, or blank
    }
    const bool isBlank = found == values.end() || found->is_null() ||
                         (found->is_array() && found->empty()) ||
                         (found->is_string() && found->get_ref<const std::string&>().empty());
    if (counts && field.required && isBlank && field.fallback.is_null()) {
      reader.noteMissing(field);
    }
  }
  for (const auto& [key, value] : values.items()) {
    if (!findField(m_fields, key)) {
      reader.noteUnknown(key);
    }
  }
}

}  // namespace fettle
