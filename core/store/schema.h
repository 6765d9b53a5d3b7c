#pragma once
#include <cstdint>
#include <string>

namespace fettle {

/// Marks a SQLite file as a machine file: "FTL1" in ASCII.
inline constexpr std::int32_t applicationId = 0x46544C31;

/// The tables of the current format.
const std::string& schemaSql();
/// The same without the files taken in, which no format has changed yet.
const std::string& recordsAndResultsSql();

}  // namespace fettle
