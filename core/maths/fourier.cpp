#include "core/maths/fourier.h"

#include <fftw3.h>

#include <mutex>
#include <new>

namespace fettle::maths {
namespace {

/// FFTW's planner (not the execution) shares global state.
std::mutex& plannerLock() {
  static std::mutex lock;
  return lock;
}

}  // namespace

struct RealFourier::Plan {
  struct Free {
    void operator()(void* memory) const { fftw_free(memory); }
  };

  explicit Plan(std::size_t n)
      : length(n), samples(fftw_alloc_real(n)), spectrum(fftw_alloc_complex(n / 2 + 1)) {
    if (!samples || !spectrum) {
      throw std::bad_alloc();
    }
    const std::lock_guard guard(plannerLock());
    plan = fftw_plan_dft_r2c_1d(static_cast<int>(n), samples.get(), spectrum.get(), FFTW_ESTIMATE);
  }
  ~Plan() {
    const std::lock_guard guard(plannerLock());
    fftw_destroy_plan(plan);
  }
  Plan(const Plan&) = delete;
  Plan& operator=(const Plan&) = delete;

  std::size_t length;
  std::unique_ptr<double, Free> samples;
  std::unique_ptr<fftw_complex, Free> spectrum;
  fftw_plan plan = nullptr;
};

RealFourier::RealFourier(std::size_t length) : m_plan(std::make_unique<Plan>(length)) {}
RealFourier::~RealFourier() = default;
RealFourier::RealFourier(RealFourier&&) noexcept = default;
RealFourier& RealFourier::operator=(RealFourier&&) noexcept = default;

std::span<double> RealFourier::input() {
  return {m_plan->samples.get(), m_plan->length};
}

std::span<const std::complex<double>> RealFourier::transform() {
  fftw_execute(m_plan->plan);
  // The layouts of fftw_complex and std::complex<double> agree (FFTW manual, "Complex numbers").
  return {reinterpret_cast<const std::complex<double>*>(m_plan->spectrum.get()), m_plan->length / 2 + 1};
}

}  // namespace fettle::maths
