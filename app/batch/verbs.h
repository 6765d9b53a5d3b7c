#pragma once
#include <string>

#include "core/measure/json.h"

namespace fettle::batch {

/// One sentence for standard error; the program ends with status 2.
struct Failure {
  std::string sentence;
};

// Each verb throws Failure, or returns what goes to standard output.

/// The fields and results of one step, or of all.
std::string describe(const std::string& step);
/// The JSON schema of a history.
std::string describeHistory();
/// `inputs` and `sheet` are paths; "-" is standard input, an empty sheet none.
std::string evaluate(const std::string& step, const std::string& inputs, const std::string& sheet);
std::string importFile(const std::string& json, const std::string& machineFile);
std::string exportFile(const std::string& machineFile, const std::string& json);
std::string report(int& argc, char** argv, const std::string& machineFile, const std::string& out);
/// Integrity of the file and recomputation of every stored result; throws when something differs.
std::string verify(const std::string& machineFile);

/// The JSON in a file or on standard input.
Json readJson(const std::string& path);
/// All bytes of a file.
std::string readBytes(const std::string& path);
/// Writes a file whole or not at all.
void writeBytes(const std::string& path, const std::string& bytes);

}  // namespace fettle::batch
