#include "core/maths/modal_density.h"

#include <complex>

namespace fettle::maths {
namespace {

using Complex = std::complex<double>;

/// 1/(1 − r² + 2iζr); written out because dividing complex numbers is slow.
Complex inverseDenominator(double ratio, double damping) {
  const double real = 1.0 - ratio * ratio;
  const double imaginary = 2.0 * damping * ratio;
  const double square = real * real + imaginary * imaginary;
  return {real / square, -imaginary / square};
}

Complex response(const ModalModel& model, double frequency) {
  Complex sum = 1.0;
  for (const Mode& mode : model.modes) {
    const double ratio = frequency / mode.frequency;
    sum += mode.coefficient * ratio * ratio * inverseDenominator(ratio, mode.damping);
  }
  return sum;
}

}  // namespace

double modalDensity(const ModalModel& model, double frequency) {
  return model.amplitude * std::norm(response(model, frequency)) + model.background;
}

double modalDensity(const ModalModel& model, double frequency, Eigen::Ref<Eigen::RowVectorXd> gradient) {
  const Complex sum = response(model, frequency);
  gradient[0] = std::norm(sum);
  gradient[1] = 1.0;
  // dS/dx = 2A·Re(conj(H)·dH/dx)
  const auto derivative = [&](const Complex& slope) {
    return 2.0 * model.amplitude * std::real(std::conj(sum) * slope);
  };
  Eigen::Index column = 2;
  for (const Mode& mode : model.modes) {
    const double ratio = frequency / mode.frequency;
    const double square = ratio * ratio;
    const Complex inverse = inverseDenominator(ratio, mode.damping);
    const Complex common = mode.coefficient * square * inverse * inverse;
    gradient[column++] = derivative(-2.0 * common * Complex(1.0, mode.damping * ratio) / mode.frequency);
    gradient[column++] = derivative(-common * Complex(0.0, 2.0 * ratio));
    gradient[column++] = derivative(square * inverse);
  }
  return model.amplitude * std::norm(sum) + model.background;
}

}  // namespace fettle::maths
