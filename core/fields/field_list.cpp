#include "core/fields/field_list.h"

#include <algorithm>
#include <limits>
#include <set>

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

/// NaN for a value that is refused: a blank one may count from elsewhere, a refused one must not.
std::optional<double> numberOrNaN(const Field& field, const Json& value, FieldReader& reader) {
  const std::size_t refused = reader.refusals().size();
  const auto number = reader.number(field, value);
  return reader.refusals().size() > refused ? std::numeric_limits<double>::quiet_NaN() : number;
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

FieldHandle& FieldHandle::requiredWhen(std::string field, std::vector<std::string> values) {
  m_field->requiredWhen = Condition{std::move(field), std::move(values)};
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

FieldHandle& FieldHandle::inGroup(std::string heading, bool folded) {
  m_field->group = std::move(heading);
  m_field->folded = folded;
  return *this;
}

FieldHandle& FieldHandle::folded() {
  m_field->folded = true;
  return *this;
}

FieldHandle& FieldHandle::carriesOver() {
  m_field->carriesOver = true;
  return *this;
}

FieldHandle& FieldHandle::blankFrom(Origin::Place place, std::string key) {
  m_field->blankFrom = Origin{place, std::move(key)};
  return *this;
}

void FieldList::oneOf(const std::vector<std::string>& keys) {
  for (auto& field : m_fields) {
    if (field.key == keys.front()) {
      field.alternatives.assign(keys.begin() + 1, keys.end());
    }
  }
}

FieldHandle FieldList::add(Field field, Read read, Write write) {
  m_fields.push_back(std::move(field));
  m_reads.push_back(std::move(read));
  m_writes.push_back(std::move(write));
  return FieldHandle(m_fields.back());
}

FieldHandle FieldList::number(std::string key, double& member, std::string label, std::string unit) {
  Field field = makeField(FieldKind::number, std::move(key), std::move(label), std::move(unit));
  field.fallback = member;
  return add(
      std::move(field),
      [&member](const Field& f, const Json& value, FieldReader& reader) {
        member = numberOrNaN(f, value, reader).value_or(member);
      },
      [&member] { return Json(member); });
}

FieldHandle FieldList::number(std::string key, std::optional<double>& member, std::string label,
                              std::string unit) {
  Field field = makeField(FieldKind::number, std::move(key), std::move(label), std::move(unit));
  return add(
      std::move(field),
      [&member](const Field& f, const Json& value, FieldReader& reader) {
        member = numberOrNaN(f, value, reader);
      },
      [&member] { return member ? Json(*member) : Json(); });
}

FieldHandle FieldList::choice(std::string key, std::string& member, std::string label,
                              std::vector<Choice> choices) {
  Field field = makeField(FieldKind::choice, std::move(key), std::move(label));
  field.choices = std::move(choices);
  if (!member.empty()) {
    field.fallback = member;
  }
  return add(
      std::move(field),
      [&member](const Field& f, const Json& value, FieldReader& reader) {
        member = reader.choice(f, value).value_or(member);
      },
      [&member] { return Json(member); });
}

FieldHandle FieldList::text(std::string key, std::string& member, std::string label) {
  Field field = makeField(FieldKind::text, std::move(key), std::move(label));
  return add(
      std::move(field),
      [&member](const Field& f, const Json& value, FieldReader& reader) {
        member = reader.text(f, value).value_or("");
      },
      [&member] { return Json(member); });
}

FieldHandle FieldList::yesNo(std::string key, std::optional<bool>& member, std::string label) {
  Field field = makeField(FieldKind::yesNo, std::move(key), std::move(label));
  return add(
      std::move(field),
      [&member](const Field& f, const Json& value, FieldReader& reader) {
        member = reader.yesNo(f, value);
      },
      [&member] { return member ? Json(*member) : Json(); });
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

void FieldList::noteUnlessOneServes(const Field& field, const Json& values,
                                    const std::set<std::string>& filled, FieldReader& reader) const {
  std::vector<std::string> keys = field.alternatives;
  keys.insert(keys.begin(), field.key);
  const auto serves = [&](const std::string& key) { return filled.count(key) > 0; };
  if (std::any_of(keys.begin(), keys.end(), serves)) {
    return;
  }
  // What was begun is asked for, not another way to say it.
  const auto begun = std::find_if(keys.begin(), keys.end(), [&](const std::string& key) {
    return values.contains(key) && !isBlankValue(values[key]);
  });
  reader.noteMissing(begun == keys.end() ? field : *findField(m_fields, *begun));
}

void FieldList::read(const Json& values, FieldReader& reader) const {
  static const Json blank;
  std::set<std::string> filled;
  for (std::size_t i = 0; i < m_fields.size(); ++i) {
    const Field& field = m_fields[i];
    const auto found = values.find(field.key);
    const bool counts = applies(field, values, m_fields);
    const Json& value = found != values.end() && counts ? *found : blank;
    const std::size_t before = reader.missing().size();
    m_reads[i](field, value, reader);
    if (!counts && found != values.end() && field.kind == FieldKind::number && !found->is_number()) {
      reader.number(field, *found);  // what does not count now must still be a number, or blank
    }
    const bool isBlank = isBlankValue(value) || reader.hasNoRows(field);
    if (!isBlank) {
      filled.insert(field.key);
    }
    const bool isNoted = reader.missing().size() > before && !reader.hasNoRows(field);
    if (counts && isBlank && !isNoted && field.fallback.is_null() && isRequired(field, values, m_fields)) {
      reader.noteMissing(field);
    }
  }
  for (const auto& field : m_fields) {
    if (!field.alternatives.empty()) {
      noteUnlessOneServes(field, values, filled, reader);
    }
  }
  for (const auto& [key, value] : values.items()) {
    if (!findField(m_fields, key)) {
      reader.noteUnknown(key, m_fields);
    }
  }
}

}  // namespace fettle
