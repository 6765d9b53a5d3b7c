#pragma once
#include <Eigen/Core>
#include <cstddef>
#include <vector>

namespace fettle::maths {

/// One mode of vibration as seen at one point.
struct Mode {
  double frequency = 0.0;    ///< undamped natural frequency f_k, Hz
  double damping = 0.0;      ///< damping ratio ζ_k
  double coefficient = 0.0;  ///< c_k, real; share of the mode in the motion of the point
};

/// Density of the acceleration of a point of a structure whose base is shaken with a flat density A:
///   S(f) = A·|1 + Σ c_k r_k²/(1 − r_k² + 2iζ_k r_k)|² + B,  r_k = f/f_k.
/// The modes add coherently: between two of them the density may fall to the background B.
/// (Modal superposition under base excitation, e.g. Ewins 2000, chapter 2.)
struct ModalModel {
  double amplitude = 0.0;   ///< A
  double background = 0.0;  ///< B
  std::vector<Mode> modes;

  /// Number of parameters: A, B and three for each mode.
  Eigen::Index parameters() const { return 2 + 3 * static_cast<Eigen::Index>(modes.size()); }
};

/// S(f), f ≥ 0 Hz.
double modalDensity(const ModalModel& model, double frequency);

/// S(f) and its derivatives by A, B, then f_k, ζ_k, c_k of each mode in turn; `gradient` has
/// model.parameters() elements.
double modalDensity(const ModalModel& model, double frequency, Eigen::Ref<Eigen::RowVectorXd> gradient);

}  // namespace fettle::maths
