#pragma once
#include <functional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "core/history/history.h"
#include "core/store/blobs.h"

namespace fettle {

// The text exchange format: a whole history as JSON (history_form.h, schema in resources/schema), files
// taken in beside it. Signed results are part of it; those of today are computed again on import.

/// A history as text, and the contents it refers to by path.
struct ExportedHistory {
  Json json;
  struct File {
    std::string path;  ///< relative to the JSON file
    std::string sha256;
  };
  std::vector<File> files;
};

/// `folder` is the relative folder the files taken in go to.
ExportedHistory exportHistory(const History& history, const std::string& folder);

struct ImportedHistory {
  History history;
  Blobs blobs;
};

/// Reads the form above, and the same written by hand: ids, hashes and dates may be left out. `readFile`
/// gives the bytes of a path relative to the JSON file. The error is one sentence.
tl::expected<ImportedHistory, std::string> importHistory(
    const Json& json,
    const std::function<tl::expected<std::string, std::string>(const std::string&)>& readFile);

}  // namespace fettle
