#include "core/maths/peaks.h"

#include <algorithm>

namespace fettle::maths {
namespace {

double prominence(std::span<const double> values, std::size_t peak) {
  const double height = values[peak];
  double left = height;
  for (std::size_t i = peak + 1; i-- > 0 && values[i] <= height;) {
    left = std::min(left, values[i]);
  }
  double right = height;
  for (std::size_t i = peak; i < values.size() && values[i] <= height; ++i) {
    right = std::min(right, values[i]);
  }
  return height - std::max(left, right);
}

}  // namespace

std::vector<Peak> findPeaks(std::span<const double> values) {
  std::vector<Peak> peaks;
  for (std::size_t i = 1; i + 1 < values.size(); ++i) {
    if (!(values[i - 1] < values[i])) {
      continue;
    }
    std::size_t ahead = i + 1;
    while (ahead + 1 < values.size() && values[ahead] == values[i]) {
      ++ahead;
    }
    if (values[ahead] < values[i]) {
      const std::size_t middle = (i + ahead - 1) / 2;
      peaks.push_back({middle, values[i], prominence(values, middle)});
      i = ahead - 1;
    }
  }
  return peaks;
}

}  // namespace fettle::maths
