#include "core/steps/contract/result_key.h"

#include <algorithm>
#include <stdexcept>

namespace fettle {
namespace {

std::string takePart(const std::string& text, std::size_t& from) {
  const std::size_t dot = text.find('.', from);
  const std::size_t end = dot == std::string::npos ? text.size() : dot;
  std::string part = text.substr(from, end - from);
  from = end + 1;
  return part;
}

/// Adds what stands for the <name> of one part: "1" of "mode_1_hz" and "mode_<k>_hz". False when they
/// differ.
bool matchPart(const std::string& part, const std::string& pattern, std::vector<std::string>& names) {
  const std::size_t open = pattern.find('<');
  const std::size_t close = pattern.find('>');
  if (open == std::string::npos || close == std::string::npos) {
    return part == pattern;
  }
  const std::string before = pattern.substr(0, open);
  const std::string after = pattern.substr(close + 1);
  if (part.size() <= before.size() + after.size() || !part.starts_with(before) || !part.ends_with(after)) {
    return false;
  }
  names.push_back(part.substr(open, part.size() - before.size() - after.size()));
  return true;
}

const Choice* findChoice(const std::map<std::string, std::vector<Choice>>& choices, const std::string& name,
                         const std::string& key) {
  const auto known = choices.find(name);
  if (known == choices.end()) {
    return nullptr;
  }
  const auto found = std::find_if(known->second.begin(), known->second.end(),
                                  [&](const Choice& choice) { return choice.key == key; });
  return found == known->second.end() ? nullptr : &*found;
}

}  // namespace

std::optional<std::vector<std::string>> namesIn(const std::string& id, const std::string& pattern) {
  std::vector<std::string> names;
  std::size_t i = 0;
  std::size_t p = 0;
  while (i <= id.size() && p <= pattern.size()) {
    if (!matchPart(takePart(id, i), takePart(pattern, p), names)) {
      return std::nullopt;
    }
  }
  return i > id.size() && p > pattern.size() ? std::optional(std::move(names)) : std::nullopt;
}

bool matchesPattern(const std::string& id, const std::string& pattern) {
  return namesIn(id, pattern).has_value();
}

std::vector<std::string> namesOf(const std::string& pattern) {
  std::vector<std::string> names;
  for (std::size_t open = pattern.find('<'); open != std::string::npos;
       open = pattern.find('<', open + 1)) {
    names.push_back(pattern.substr(open + 1, pattern.find('>', open) - open - 1));
  }
  return names;
}

std::string labelOfName(const std::map<std::string, std::vector<Choice>>& choices, const std::string& name,
                        const std::string& key) {
  const Choice* known = findChoice(choices, name, key);
  return known ? known->label : key;
}

namespace detail {

void KeyPattern::expectNames(std::size_t count) const {
  if (namesOf(pattern).size() != count) {
    throw std::logic_error(pattern + ": the key has another number of names than its id");
  }
}

std::string KeyPattern::fill(const std::vector<Name>& names) const {
  std::string id;
  auto name = names.begin();
  for (std::size_t at = 0; at < pattern.size();) {
    if (pattern[at] == '<') {
      id += (name++)->key;
      at = pattern.find('>', at) + 1;
    } else {
      id += pattern[at++];
    }
  }
  return id;
}

std::vector<std::string> KeyPattern::labels(const std::vector<Name>& names) const {
  const auto places = namesOf(pattern);
  std::vector<std::string> labels;
  for (std::size_t i = 0; i < names.size(); ++i) {
    labels.push_back(names[i].label.empty() ? labelOfName(choices, places[i], names[i].key)
                                            : names[i].label);
  }
  return labels;
}

}  // namespace detail
}  // namespace fettle
