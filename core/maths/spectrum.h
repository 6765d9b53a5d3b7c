#pragma once
#include <cstddef>
#include <functional>
#include <span>
#include <vector>

#include "core/maths/expected.h"
#include "core/maths/fourier.h"

namespace fettle::maths {

/// Half-open range [begin, end) of sample indices that has no gap inside.
struct IndexRange {
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// Called with the share done, 0 to 1; answers false to cancel.
using Progress = std::function<bool(double)>;

/// The error of a computation whose Progress answered false.
inline constexpr const char* cancelled = "cancelled";

struct SegmentSettings {
  double sampleRate = 0.0;  ///< Hz
  std::size_t length = 0;   ///< samples N of a segment
  double overlap = 0.5;     ///< of N, 0 ≤ overlap < 1; the shared samples are overlap·N rounded down
};

/// One-sided power spectral density, in the square of the samples' unit per Hz.
struct PowerDensity {
  std::vector<double> frequency;  ///< Hz, 0 … fs/2 in steps of fs/N
  std::vector<double> density;
  std::size_t segments = 0;  ///< how many were averaged
};

/// Periodic Hann window w_j = ½ − ½ cos(2πj/N), j = 0 … N − 1 (Harris 1978): coherent gain 0.5,
/// equivalent noise bandwidth 1.5 bins.
std::vector<double> hannWindow(std::size_t length);

/// The power of two with the least distance to `count`; at least 1.
std::size_t nearestPowerOfTwo(double count);

/// The frequencies of the N/2 + 1 bins of a segment, Hz.
std::vector<double> segmentFrequencies(const SegmentSettings& settings);

/// First samples of all whole segments. No segment leaves its stretch; a trailing part segment is dropped.
/// Refused: settings out of bounds, a stretch outside `samples`.
Expected<std::vector<std::size_t>> segmentStarts(std::size_t samples, std::span<const IndexRange> stretches,
                                                 const SegmentSettings& settings);

/// The density of single segments: mean removed, periodic Hann window, |X_k|²/(fs·Σw²), doubled except at
/// 0 and fs/2 (Heinzel, Rüdiger and Schilling 2002).
class SegmentDensity {
 public:
  /// `settings` as accepted by segmentStarts.
  explicit SegmentDensity(const SegmentSettings& settings);
  /// Adds the density of `segment` (N samples) to `sum` (N/2 + 1 values).
  void addTo(std::span<const double> segment, std::span<double> sum);

 private:
  std::vector<double> m_window;
  RealFourier m_fourier;
  double m_scale;
};

/// Mean of the densities of all segments of all stretches (Welch 1967). The same numbers as SciPy's welch
/// with window 'hann', detrend 'constant', scaling 'density' when there is one stretch. Errors: as
/// segmentStarts; no stretch as long as a segment; a sample that is no number; cancelled.
Expected<PowerDensity> welchDensity(std::span<const double> samples, std::span<const IndexRange> stretches,
                                    const SegmentSettings& settings, const Progress& progress = {});

}  // namespace fettle::maths
