#pragma once
#include <map>
#include <string>

namespace fettle {

/// A word of the user as part of a result id: lower case, every other character one underscore.
std::string resultName(const std::string& words);

/// Names that differ: a name that comes again gets "_2", "_3".
class DistinctNames {
 public:
  std::string next(const std::string& words);

 private:
  std::map<std::string, int> m_used;
};

}  // namespace fettle
