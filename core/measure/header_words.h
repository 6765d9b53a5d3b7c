#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "core/measure/unit.h"

namespace fettle {

/// A column header taken apart.
struct HeaderWords {
  std::string name;  ///< the header without its unit
  std::string unit;  ///< the unit as written, without brackets; empty when none was found
};

/// Takes "t[us]", "temperature (C)", "time_s", "ax_mm_s2", "x mm", "t / ms" apart. A word that ends a
/// header without brackets is a unit only if it is known (and of the dimension `column` when that is
/// given); square brackets always hold a unit, known or not. With `column` a header that is a unit itself
/// is both.
HeaderWords splitHeader(std::string_view header, std::optional<Dimension> column = std::nullopt);

}  // namespace fettle
