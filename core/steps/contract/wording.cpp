#include "core/steps/contract/wording.h"

#include <algorithm>

#include "core/measure/text.h"

namespace fettle {
namespace {

/// The id up to its last dot, or nothing.
std::string ownerOf(const std::string& id) {
  const std::size_t dot = id.rfind('.');
  return dot == std::string::npos ? std::string() : id.substr(0, dot);
}

void append(std::string& list, const std::string& word, const char* between = ", ") {
  list += (list.empty() || word.empty() ? "" : between) + word;
}

std::string patternOf(const Step& step, const std::string& id) {
  const ResultDescription* result = step.describe(id);
  const SettingDescription* setting = result ? nullptr : step.setting(id);
  return result ? result->id : setting ? setting->id : id;
}

std::string plainLabel(const Step& step, const std::string& id) {
  const ResultDescription* result = step.describe(id);
  const SettingDescription* setting = result ? nullptr : step.setting(id);
  return result ? result->label : setting ? setting->label : id;
}

std::string wordOf(const std::vector<Choice>& words, const std::string& key) {
  const auto known =
      std::find_if(words.begin(), words.end(), [&](const Choice& word) { return word.key == key; });
  return known == words.end() ? key : known->label;
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

Wording::Wording(const Step& step, const StepResult* result, std::string subject)
    : m_step(step), m_subject(std::move(subject)) {
  if (!result) {
    return;
  }
  for (const auto& value : result->values) {
    m_names[value.id] = value.names;
  }
  for (const auto& text : result->texts) {
    m_names[text.id] = text.names;
  }
  for (const auto& proposal : result->settings) {
    m_names[proposal.id] = proposal.names;
  }
}

std::vector<std::string> Wording::namesOfId(const std::string& id, const std::string& pattern) const {
  if (const auto known = m_names.find(id); known != m_names.end() && !known->second.empty()) {
    return known->second;
  }
  auto names = namesIn(id, pattern).value_or(std::vector<std::string>{});
  const auto places = namesOf(pattern);
  for (std::size_t i = 0; i < names.size(); ++i) {
    names[i] = labelOfName(m_step.idChoices, places[i], names[i]);
  }
  return names;
}

std::string Wording::text(const std::string& id, const std::string& text) const {
  if (const ResultDescription* result = m_step.describe(id)) {
    return wordOf(result->words, text);
  }
  const SettingDescription* setting = m_step.setting(id);
  return setting ? wordOf(setting->words, text) : text;
}

std::string Wording::label(const std::string& id) const {
  std::string said;
  for (const auto& name : namesOfId(id, patternOf(m_step, id))) {
    append(said, name == m_subject ? std::string() : name);
  }
  append(said, plainLabel(m_step, id), ": ");
  return said;
}

std::string Wording::owner(const std::string& id) const {
  const std::string pattern = patternOf(m_step, id);
  const auto places = namesOf(pattern);
  const auto names = namesOfId(id, pattern);
  std::string words;
  std::size_t next = 0;
  for (std::size_t from = 0; from <= pattern.size();) {
    const std::size_t dot = std::min(pattern.find('.', from), pattern.size());
    const std::string part = pattern.substr(from, dot - from);
    from = dot + 1;
    if (part.find('<') != std::string::npos && next < names.size()) {
      append(words, names[next] == m_subject ? std::string() : names[next]);
      ++next;
    } else if (from <= pattern.size()) {
      append(words, labelOfName(m_step.idChoices, part, part));
    }
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
      append(all, field ? field->label : path, "; ");
      before.clear();
      continue;
    }
    const std::string row = path.substr(0, close);
    const std::string key = path.substr(close + 2);
    const Field* column = findField(field->columns, key);
    const std::string label = column ? column->label : key;
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
  const Field* field = findField(step.fields, step.subjectField);
  return field ? wordOf(field->choices, subject) : subject;
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
  for (const auto& given : result.texts) {
    const std::string& id = given.id;
    NamedTable* table = findTable(tables, tableOf(patternOf(wording.step(), id)));
    const std::string label = plainLabel(wording.step(), id);
    const std::string words = wording.text(id, given.text);
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
