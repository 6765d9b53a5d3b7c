#include "core/measure/header_words.h"

#include <algorithm>

#include "core/measure/number_text.h"

namespace fettle {
namespace {

bool isSeparator(char c) {
  return c == ' ' || c == '\t' || c == '_';
}

/// Where the last word before `end` begins.
std::size_t lastWord(std::string_view text, std::size_t end) {
  while (end > 0 && !isSeparator(text[end - 1])) {
    --end;
  }
  return end;
}

std::string_view withoutTail(std::string_view text) {
  const auto last = text.find_last_not_of(" \t_/,:;-=");
  return last == text.npos ? std::string_view() : text.substr(0, last + 1);
}

/// "mm s2", "mm_s2", "C per min" and "per mm" as "mm/s2", "C/min" and "1/mm".
std::string joinedWords(std::string_view words) {
  std::string out = words.starts_with("per") && words.size() > 3 && isSeparator(words[3]) ? "1" : "";
  while (!words.empty()) {
    const auto end = std::min(words.find_first_of(" \t_"), words.size());
    const auto word = words.substr(0, end);
    if (!word.empty() && word != "per") {
      out += out.empty() ? "" : "/";
      out += word;
    }
    words.remove_prefix(std::min(end + 1, words.size()));
  }
  return out;
}

/// The longest run of up to four last words that is a unit, with a name left in front of it.
std::optional<HeaderWords> unitAtEnd(std::string_view header, std::optional<Dimension> column) {
  std::optional<HeaderWords> found;
  std::size_t begin = header.size();
  for (int words = 1; words <= 4; ++words) {
    begin = lastWord(header, begin);
    const auto name = withoutTail(header.substr(0, begin));
    if (begin == 0 || name.empty()) {
      break;
    }
    const auto unit = joinedWords(header.substr(begin));
    const bool afterPer = name.size() > 3 && name.substr(lastWord(name, name.size())) == "per";
    if (!afterPer && unitFromText(unit, column)) {
      found = HeaderWords{std::string(name), unit};
    }
    begin -= 1;
  }
  return found;
}

std::optional<HeaderWords> unitInBrackets(std::string_view header) {
  const bool square = header.back() == ']';
  if (!square && header.back() != ')') {
    return std::nullopt;
  }
  // "a (J/(g K))" has brackets in brackets: the first opening one belongs to the last closing one.
  const auto open = header.find(square ? '[' : '(');
  if (open == header.npos) {
    return std::nullopt;
  }
  const auto inside = trimmed(header.substr(open + 1, header.size() - open - 2));
  const auto name = withoutTail(header.substr(0, open));
  if (inside.empty() || (!square && !unitFromText(inside))) {
    return std::nullopt;
  }
  return HeaderWords{std::string(name), std::string(inside)};
}

}  // namespace

HeaderWords splitHeader(std::string_view header, std::optional<Dimension> column) {
  header = trimmed(header);
  if (header.empty()) {
    return {};
  }
  if (auto found = unitInBrackets(header)) {
    return *found;
  }
  if (auto found = unitAtEnd(header, column)) {
    return *found;
  }
  if (column && unitFromText(header, column)) {
    return {std::string(header), std::string(header)};
  }
  // "t/ms", the notation of ISO 80000-1 (quantity divided by its unit).
  const auto slash = header.find('/');
  if (slash != header.npos && slash > 0 && !unitFromText(header)) {
    const auto unit = header.substr(slash + 1);
    if (unitFromText(unit, column)) {
      return {std::string(withoutTail(header.substr(0, slash))), std::string(trimmed(unit))};
    }
  }
  return {std::string(header), ""};
}

}  // namespace fettle
