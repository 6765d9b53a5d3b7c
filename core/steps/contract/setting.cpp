#include "core/steps/contract/setting.h"

namespace fettle {
namespace {

std::string takePart(const std::string& text, std::size_t& from) {
  const std::size_t dot = text.find('.', from);
  const std::size_t end = dot == std::string::npos ? text.size() : dot;
  std::string part = text.substr(from, end - from);
  from = end + 1;
  return part;
}

/// "mode_1_hz" fits "mode_<k>_hz".
bool partMatches(const std::string& part, const std::string& pattern) {
  const std::size_t open = pattern.find('<');
  const std::size_t close = pattern.find('>');
  if (open == std::string::npos || close == std::string::npos) {
    return part == pattern;
  }
  const std::string before = pattern.substr(0, open);
  const std::string after = pattern.substr(close + 1);
  return part.size() > before.size() + after.size() && part.starts_with(before) && part.ends_with(after);
}

}  // namespace

bool matchesPattern(const std::string& id, const std::string& pattern) {
  std::size_t i = 0;
  std::size_t p = 0;
  while (i <= id.size() && p <= pattern.size()) {
    if (!partMatches(takePart(id, i), takePart(pattern, p))) {
      return false;
    }
  }
  return i > id.size() && p > pattern.size();
}

}  // namespace fettle
