#pragma once
#include <string>
#include <tl/expected.hpp>
#include <utility>

namespace fettle::maths {

/// A value, or one sentence that says why there is none.
template <typename Value>
using Expected = tl::expected<Value, std::string>;

/// The failing side of an Expected.
inline tl::unexpected<std::string> failure(std::string reason) {
  return tl::unexpected<std::string>(std::move(reason));
}

}  // namespace fettle::maths
