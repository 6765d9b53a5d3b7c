#pragma once
#include <map>
#include <memory>
#include <string>
#include <vector>

namespace fettle {

/// Columns read from a log or a sensor's file, in the fixed units; all columns have equal length.
struct Capture {
  std::string name;    ///< file name as the user knows it
  std::string sha256;  ///< of the file's bytes, hexadecimal
  std::map<std::string, std::vector<double>> columns;

  const std::vector<double>& column(const std::string& key) const { return columns.at(key); }
  bool has(const std::string& key) const { return columns.count(key) > 0; }
  std::size_t rows() const { return columns.empty() ? 0 : columns.begin()->second.size(); }
};

using CapturePointer = std::shared_ptr<const Capture>;

}  // namespace fettle
