#pragma once
#include <complex>
#include <cstddef>
#include <memory>
#include <span>

namespace fettle::maths {

/// Discrete Fourier transform of real samples, X_k = Σ x_j exp(−2πi jk/N), k = 0 … N/2, no scaling.
/// One object holds one plan and its buffers and may be used again and again; several threads may each have
/// their own. Planning is guarded by a lock and never measures, so the same samples always give the same
/// bits.
class RealFourier {
 public:
  /// `length` N ≥ 1.
  explicit RealFourier(std::size_t length);
  ~RealFourier();
  RealFourier(RealFourier&&) noexcept;
  RealFourier& operator=(RealFourier&&) noexcept;

  /// The N samples to transform; fill before `transform`.
  std::span<double> input();
  /// The N/2 + 1 complex values; valid until the next call.
  std::span<const std::complex<double>> transform();

 private:
  struct Plan;
  std::unique_ptr<Plan> m_plan;
};

}  // namespace fettle::maths
