#pragma once
#include <algorithm>
#include <cstddef>
#include <vector>

#include "core/maths/expected.h"

namespace fettle::maths {

/// Fits with all starts and drops one after another until every part of the fit is determined by the data.
/// `fit(starts)` answers an Expected<Fit>; `excess(fit, k)` says how far part k is beyond its limits, up to
/// 1 it counts. The part furthest beyond goes first; when the fit fails, the last start does. An empty Fit
/// when none is left; the error of `fit` when it fails with a single start.
template <typename Fit, typename Start, typename FitFunction, typename ExcessFunction>
Expected<Fit> determinedFit(std::vector<Start> starts, const FitFunction& fit,
                            const ExcessFunction& excess) {
  while (!starts.empty()) {
    Expected<Fit> result = fit(starts);
    if (!result && starts.size() == 1) {
      return result;
    }
    if (!result) {
      starts.pop_back();
      continue;
    }
    std::vector<double> excesses;
    for (std::size_t k = 0; k < starts.size(); ++k) {
      excesses.push_back(excess(*result, k));
    }
    const auto worst = std::max_element(excesses.begin(), excesses.end());
    if (*worst <= 1.0) {
      return result;
    }
    starts.erase(starts.begin() + (worst - excesses.begin()));
  }
  return Fit{};
}

}  // namespace fettle::maths
