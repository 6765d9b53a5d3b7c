#pragma once
#include <filesystem>
#include <string>

#include "core/intake/intake_error.h"

namespace fettle {

/// All bytes of a file, or one sentence when it cannot be read.
Intake<std::string> readFileBytes(const std::filesystem::path& path);

}  // namespace fettle
