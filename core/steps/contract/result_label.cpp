#include "core/steps/contract/result_label.h"

#include <algorithm>

#include "core/measure/text.h"
#include "core/steps/contract/result_name.h"

namespace fettle {
namespace {

std::vector<std::string> partsOf(const std::string& id) {
  std::vector<std::string> parts;
  for (std::size_t from = 0; from <= id.size();) {
    const std::size_t dot = std::min(id.find('.', from), id.size());
    parts.push_back(id.substr(from, dot - from));
    from = dot + 1;
  }
  return parts;
}

/// What stands for the <name> of one part of a pattern: "1" of "mode_1_hz" and "mode_<k>_hz"; empty
/// without.
std::string nameIn(const std::string& part, const std::string& pattern) {
  const std::size_t open = pattern.find('<');
  const std::size_t close = pattern.find('>');
  return open == std::string::npos ? std::string()
                                   : part.substr(open, part.size() - (pattern.size() - 1 - close) - open);
}

/// The id up to its last dot, or nothing.
std::string ownerOf(const std::string& id) {
  const std::size_t dot = id.rfind('.');
  return dot == std::string::npos ? std::string() : id.substr(0, dot);
}

/// "hot_end" as "hot end".
std::string spoken(std::string name) {
  std::replace(name.begin(), name.end(), '_', ' ');
  return name;
}

void append(std::string& list, const std::string& word, const char* between = ", ") {
  list += (list.empty() || word.empty() ? "" : between) + word;
}

std::string patternOf(const Step& step, const std::string& id) {
  if (const ResultDescription* result = step.describe(id)) {
    return result->id;
  }
  const auto setting = std::find_if(step.settings.begin(), step.settings.end(),
                                    [&](const auto& one) { return matchesPattern(id, one.id); });
  return setting == step.settings.end() ? id : setting->id;
}

std::string plainLabel(const Step& step, const std::string& id) {
  if (const ResultDescription* result = step.describe(id)) {
    return result->label;
  }
  const auto setting = std::find_if(step.settings.begin(), step.settings.end(),
                                    [&](const auto& one) { return matchesPattern(id, one.id); });
  return setting == step.settings.end() ? spoken(id) : setting->label;
}

/// Owners that share the same parts of a pattern go into one table; "#" where the last part has a name too.
std::string tableOf(const std::string& pattern) {
  const std::string owner = ownerOf(pattern);
  const bool named = pattern.find('<', owner.size()) != std::string::npos;
  return owner.empty() ? std::string() : owner + (named ? "#" : "");
}

struct NamedTable {
  std::string name;
  ResultTable table;
};

NamedTable* findTable(std::vector<NamedTable>& tables, const std::string& name) {
  const auto known = std::find_if(tables.begin(), tables.end(),
                                  [&](const NamedTable& table) { return table.name == name; });
  return known == tables.end() ? nullptr : &*known;
}

void addToTable(ResultTable& table, const std::string& ofOwner, const std::string& label,
                const ResultValue& value) {
  auto column = std::find_if(table.columns.begin(), table.columns.end(),
                             [&](const auto& known) { return known.label == label; });
  if (column == table.columns.end()) {
    table.columns.push_back({label, value.unit});
    column = table.columns.end() - 1;
  }
  auto owner = std::find(table.owners.begin(), table.owners.end(), ofOwner);
  if (owner == table.owners.end()) {
    table.owners.push_back(ofOwner);
    table.rows.emplace_back();
    owner = table.owners.end() - 1;
  }
  auto& row = table.rows[static_cast<std::size_t>(owner - table.owners.begin())];
  row.resize(std::max(row.size(), table.columns.size()));
  row[static_cast<std::size_t>(column - table.columns.begin())] = &value;
}

/// False when the table has no such owner.
bool addNote(ResultTable& table, const std::string& ofOwner, const std::string& label,
             const std::string& text) {
  const auto owner = std::find(table.owners.begin(), table.owners.end(), ofOwner);
  if (owner == table.owners.end()) {
    return false;
  }
  auto notes = std::find_if(table.notes.begin(), table.notes.end(),
                            [&](const auto& known) { return known.label == label; });
  if (notes == table.notes.end()) {
    table.notes.push_back({label, std::vector<std::string>(table.owners.size())});
    notes = table.notes.end() - 1;
  }
  notes->texts[static_cast<std::size_t>(owner - table.owners.begin())] = text;
  return true;
}

}  // namespace

Wording::Wording(const Step& step, const Json& inputs, std::string subject)
    : m_step(step), m_subject(std::move(subject)) {
  for (const auto& name : step.names) {
    m_words.emplace(name.key, name.label);
  }
  learn(step.fields);
  learn(inputs);
}

void Wording::learn(const std::vector<Field>& fields) {
  for (const auto& field : fields) {
    if (field.kind == FieldKind::choice) {
      for (const auto& choice : field.choices) {
        m_words.emplace(choice.key, choice.label);
      }
    }
    learn(field.columns);
  }
}

void Wording::learn(const Json& typed) {
  if (typed.is_string()) {
    const auto& words = typed.get_ref<const std::string&>();
    m_words.emplace(resultName(words), words);
  } else if (typed.is_structured()) {
    for (const auto& part : typed) {
      learn(part);
    }
  }
}

std::optional<std::string> Wording::known(const std::string& part) const {
  if (const auto word = m_words.find(part); word != m_words.end()) {
    return word->second;
  }
  const std::size_t digits = part.find_last_not_of("0123456789") + 1;
  if (digits < 2 || digits == part.size() || part[digits - 1] != '_') {
    return std::nullopt;
  }
  const auto counted = known(part.substr(0, digits - 1));
  return counted ? std::optional(*counted + " " + part.substr(digits)) : std::nullopt;
}

std::string Wording::name(const std::string& part) const {
  return known(part).value_or(spoken(part));
}

std::string Wording::text(const std::string& text) const {
  return known(text).value_or(text);
}

std::string Wording::label(const std::string& id) const {
  const auto parts = partsOf(id);
  const auto patterns = partsOf(patternOf(m_step, id));
  std::string names;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const std::string inside = nameIn(parts[i], patterns[i]);
    append(names, inside == m_subject ? std::string() : name(inside));
  }
  append(names, plainLabel(m_step, id), ": ");
  return names;
}

std::string Wording::owner(const std::string& id) const {
  const auto parts = partsOf(id);
  const auto patterns = partsOf(patternOf(m_step, id));
  std::string words;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const bool isLast = i + 1 == parts.size();
    const std::string part = isLast ? nameIn(parts[i], patterns[i]) : parts[i];
    append(words, part == m_subject ? std::string() : name(part));
  }
  return words;
}

std::string Wording::paths(const std::vector<std::string>& paths) const {
  std::string all, before;
  for (const auto& path : paths) {
    const std::size_t open = path.find('[');
    const std::size_t close = path.find("].");
    const Field* field = findField(m_step.fields, path.substr(0, open));
    const bool isCell = field && open != std::string::npos && close != std::string::npos;
    if (!isCell) {
      append(all, field ? field->label : spoken(path), "; ");
      before.clear();
      continue;
    }
    const std::string row = path.substr(0, close);
    const std::string key = path.substr(close + 2);
    const Field* column = findField(field->columns, key);
    const std::string label = column ? column->label : spoken(key);
    append(all,
           row == before ? label
                         : say(Text::tr("{0}, row {1}: {2}"), field->label,
                               path.substr(open + 1, close - open - 1), label),
           row == before ? ", " : "; ");
    before = row;
  }
  return all;
}

std::string subjectOf(const Step& step, const Json& inputs, const std::string& ofRun) {
  const auto chosen = inputs.is_object() ? inputs.find(step.subjectField) : inputs.end();
  const bool isChosen = chosen != inputs.end() && chosen->is_string() && *chosen != Json("");
  return isChosen ? chosen->get<std::string>() : ofRun;
}

std::string subjectName(const Step& step, const Json& inputs, const std::string& ofRun) {
  const std::string subject = subjectOf(step, inputs, ofRun);
  return subject.empty() ? subject : Wording(step).name(subject);
}

ArrangedResults arrangeResults(const Wording& wording, const StepResult& result) {
  ArrangedResults arranged;
  std::vector<NamedTable> tables;
  for (const auto& value : result.values) {
    const ResultDescription* description = wording.step().describe(value.id);
    const std::string name = description ? tableOf(description->id) : std::string();
    if (name.empty()) {
      arranged.single.push_back(&value);
      continue;
    }
    NamedTable* table = findTable(tables, name);
    if (!table) {
      table = &tables.emplace_back(NamedTable{name, {}});
    }
    addToTable(table->table, wording.owner(value.id), description->label, value);
  }
  std::erase_if(tables, [&](const NamedTable& table) {
    if (table.table.owners.size() > 1) {
      return false;
    }
    const auto& only = table.table.rows[0];  // nothing stands beside it: read line by line
    arranged.single.insert(arranged.single.end(), only.begin(), only.end());
    return true;
  });
  for (const auto& [id, text] : result.texts) {
    NamedTable* table = findTable(tables, tableOf(patternOf(wording.step(), id)));
    const std::string label = plainLabel(wording.step(), id);
    const std::string words = wording.text(text);
    if (!table || !addNote(table->table, wording.owner(id), label, words)) {
      arranged.texts.emplace_back(wording.label(id), words);
    }
  }
  for (auto& [name, table] : tables) {
    for (auto& row : table.rows) {
      row.resize(table.columns.size());
    }
    arranged.tables.push_back(std::move(table));
  }
  return arranged;
}

}  // namespace fettle
