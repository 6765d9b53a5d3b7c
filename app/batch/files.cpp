#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>

#include "app/batch/verbs.h"
#include "core/intake/file_bytes.h"
#include "core/measure/text.h"

namespace fettle::batch {

std::string readBytes(const std::string& path) {
  auto bytes = readFileBytes(path);
  if (!bytes) {
    throw Failure{bytes.error().sentence};
  }
  return std::move(*bytes);
}

Json readJson(const std::string& path) {
  const std::string text =
      path == "-" ? std::string(std::istreambuf_iterator<char>(std::cin), {}) : readBytes(path);
  const std::string named = path == "-" ? Text::tr("Standard input") : path;
  try {
    return Json::parse(text);
  } catch (const Json::parse_error& problem) {
    throw Failure{
        say(Text::tr("{0} is not JSON: the text cannot be read from byte {1} on."), named, problem.byte)};
  } catch (const Json::out_of_range&) {
    throw Failure{say(Text::tr("{0} holds a number that is too large; up to 1e308 is possible."), named)};
  }
}

void writeBytes(const std::string& path, const std::string& bytes) {
  const std::string beside = path + ".part";
  std::ofstream file(beside, std::ios::binary | std::ios::trunc);
  file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  file.close();
  std::error_code problem;
  if (file) {
    std::filesystem::rename(beside, path, problem);
  }
  if (!file || problem) {
    std::error_code ignored;
    std::filesystem::remove(beside, ignored);
    throw Failure{say(Text::tr("{0} cannot be written; choose a folder that can be written to."), path)};
  }
}

}  // namespace fettle::batch
