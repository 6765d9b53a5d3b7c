#pragma once

namespace fettle {

/// Why an opened file cannot be written.
enum class ReadOnlyReason { none, asked, otherProgram, newerProgram, damaged, noPermission };

}  // namespace fettle
