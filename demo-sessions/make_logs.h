#pragma once
#include <filesystem>

namespace fettle::demo {

/// Writes the heater logs and the sounds of plucked belts of the demo machine into a folder; false when the
/// disk refuses. Plant, tones and seeds are invented and fixed.
bool makeLogs(const std::filesystem::path& folder);

}  // namespace fettle::demo
