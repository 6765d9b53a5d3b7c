#pragma once
#include <array>
#include <string_view>
#include <vector>

#include "core/maths/expected.h"
#include "core/maths/shaper_shape.h"

namespace fettle::maths {

/// Input shapers of the literature: zero vibration with none, one or two derivatives made zero as well, and
/// the extra-insensitive family with one, two or three humps.
enum class ShaperKind { zv, zvd, zvdd, ei, eiTwoHump, eiThreeHump };

inline constexpr std::array shaperKinds{ShaperKind::zv, ShaperKind::zvd,       ShaperKind::zvdd,
                                        ShaperKind::ei, ShaperKind::eiTwoHump, ShaperKind::eiThreeHump};

/// "zv", "zvd", "zvdd", "ei", "ei_two_hump", "ei_three_hump".
std::string_view shaperKey(ShaperKind kind);

/// A shaper for one frequency: times in s.
struct Shaper {
  std::vector<Impulse> impulses;
  double frequency = 0.0;  ///< Hz, the undamped natural frequency it is made for
  double damping = 0.0;
};

/// The shape of a shaper for the damping ratio ζ, 0 ≤ ζ ≤ 0.5. zv, zvd, zvdd: closed form with
/// K = exp(−ζπ/√(1−ζ²)) (Smith 1957; Singer and Seering 1990). The EI kinds (Singhose, Seering and Singer
/// 1994, 1996) hold the residual vibration under `tolerance` V, 0.005 ≤ V ≤ 0.2, see ei_family.h. Solving
/// an EI shape takes some milliseconds: make one per damping and scale it.
Expected<ShaperShape> shaperShape(ShaperKind kind, double damping, double tolerance = 0.05);

/// The shape scaled to a frequency in Hz, above 0.
Shaper scaledShaper(const ShaperShape& shape, double frequency);

}  // namespace fettle::maths
