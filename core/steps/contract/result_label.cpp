#include "core/steps/contract/result_label.h"

#include <algorithm>

namespace fettle {
namespace {

/// The words that stand for the <names> of a pattern, in order.
std::vector<std::string> namesIn(const std::string& id, const std::string& pattern) {
  std::vector<std::string> names;
  std::size_t i = 0;
  std::size_t p = 0;
  while (p < pattern.size() && i < id.size()) {
    if (pattern[p] != '<') {
      ++p;
      ++i;
      continue;
    }
    const std::size_t close = pattern.find('>', p);
    const std::string rest = pattern.substr(close + 1, pattern.find_first_of(".<", close) - close - 1);
    std::size_t end = std::min(id.find('.', i), id.size());
    end -= std::min(rest.size(), end - i);
    names.push_back(id.substr(i, end - i));
    i = end;
    p = close + 1;
  }
  return names;
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

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (const auto& name : names) {
    text += (text.empty() ? "" : ", ") + spoken(name);
  }
  return text;
}

struct Entry {
  const ResultValue* value;
  const ResultDescription* description;
  std::string owner, column;
};

/// "x.front.mode_2_hz" of "<axis>.<position>.mode_<k>_hz": owner "x.front 2", column the pattern's last
/// part.
Entry entryOf(const Step& step, const ResultValue& value) {
  Entry entry{&value, step.describe(value.id), ownerOf(value.id), {}};
  const std::string pattern = entry.description ? entry.description->id : value.id;
  entry.column = pattern.substr(ownerOf(pattern).empty() ? 0 : ownerOf(pattern).size() + 1);
  if (entry.column.find('<') != std::string::npos) {
    const auto names = namesIn(value.id, pattern);
    entry.owner += (entry.owner.empty() ? "" : " ") + (names.empty() ? "" : names.back());
  }
  return entry;
}

/// Owners that share the same parts of a pattern go into one table.
std::string tableOf(const Entry& entry) {
  return entry.description
             ? ownerOf(entry.description->id) + (entry.column.find('<') == std::string::npos ? "" : "#")
             : std::string();
}

void addToTable(ResultTable& table, const Entry& entry) {
  const std::string label = entry.description->label;
  auto column = std::find_if(table.columns.begin(), table.columns.end(),
                             [&](const auto& known) { return known.label == label; });
  if (column == table.columns.end()) {
    table.columns.push_back({label, entry.value->unit});
    column = table.columns.end() - 1;
  }
  auto owner = std::find(table.owners.begin(), table.owners.end(), entry.owner);
  if (owner == table.owners.end()) {
    table.owners.push_back(entry.owner);
    table.rows.emplace_back();
    owner = table.owners.end() - 1;
  }
  auto& row = table.rows[static_cast<std::size_t>(owner - table.owners.begin())];
  row.resize(std::max(row.size(), table.columns.size()));
  row[static_cast<std::size_t>(column - table.columns.begin())] = entry.value;
}

}  // namespace

std::string resultLabel(const Step& step, const std::string& id) {
  const ResultDescription* description = step.describe(id);
  if (!description) {
    return id;
  }
  const auto names = namesIn(id, description->id);
  return names.empty() ? description->label : joined(names) + ": " + description->label;
}

ArrangedResults arrangeResults(const Step& step, const StepResult& result) {
  ArrangedResults arranged;
  std::vector<std::pair<std::string, ResultTable>> tables;
  for (const auto& value : result.values) {
    const Entry entry = entryOf(step, value);
    const std::string name = tableOf(entry);
    if (entry.owner.empty() || name.empty()) {
      arranged.single.push_back(&value);
      continue;
    }
    auto known =
        std::find_if(tables.begin(), tables.end(), [&](const auto& table) { return table.first == name; });
    if (known == tables.end()) {
      tables.emplace_back(name, ResultTable{});
      known = tables.end() - 1;
    }
    addToTable(known->second, entry);
  }
  for (auto& [name, table] : tables) {
    if (table.owners.size() == 1) {  // nothing stands beside it: read line by line
      arranged.single.insert(arranged.single.end(), table.rows[0].begin(), table.rows[0].end());
      continue;
    }
    for (auto& row : table.rows) {
      row.resize(table.columns.size());
    }
    arranged.tables.push_back(std::move(table));
  }
  return arranged;
}

}  // namespace fettle
