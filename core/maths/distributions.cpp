#include "core/maths/distributions.h"

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/fisher_f.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <stdexcept>

namespace fettle::maths {
namespace {

namespace bm = boost::math;

void requireProbability(double probability) {
  if (!(probability > 0 && probability < 1)) {
    throw std::domain_error("a quantile needs a probability strictly between 0 and 1");
  }
}

}  // namespace

double normalQuantile(double probability) {
  requireProbability(probability);
  return bm::quantile(bm::normal(), probability);
}

double normalLower(double x) {
  return bm::cdf(bm::normal(), x);
}

double normalUpper(double x) {
  return bm::cdf(bm::complement(bm::normal(), x));
}

double studentQuantile(double probability, double degreesOfFreedom) {
  if (std::isinf(degreesOfFreedom) && degreesOfFreedom > 0) {
    return normalQuantile(probability);
  }
  requireProbability(probability);
  return bm::quantile(bm::students_t(degreesOfFreedom), probability);
}

double studentLower(double t, double degreesOfFreedom) {
  return studentUpper(-t, degreesOfFreedom);
}

double studentUpper(double t, double degreesOfFreedom) {
  if (std::isinf(degreesOfFreedom) && degreesOfFreedom > 0) {
    return normalUpper(t);
  }
  return bm::cdf(bm::complement(bm::students_t(degreesOfFreedom), t));
}

double chiSquareQuantile(double probability, double degreesOfFreedom) {
  requireProbability(probability);
  return bm::quantile(bm::chi_squared(degreesOfFreedom), probability);
}

double chiSquareLower(double x, double degreesOfFreedom) {
  return bm::cdf(bm::chi_squared(degreesOfFreedom), x);
}

double chiSquareUpper(double x, double degreesOfFreedom) {
  return bm::cdf(bm::complement(bm::chi_squared(degreesOfFreedom), x));
}

double fQuantile(double probability, double numerator, double denominator) {
  if (std::isinf(denominator) && denominator > 0) {
    return chiSquareQuantile(probability, numerator) / numerator;
  }
  requireProbability(probability);
  return bm::quantile(bm::fisher_f(numerator, denominator), probability);
}

double fLower(double x, double numerator, double denominator) {
  if (std::isinf(denominator) && denominator > 0) {
    return chiSquareLower(x * numerator, numerator);
  }
  return bm::cdf(bm::fisher_f(numerator, denominator), x);
}

double fUpper(double x, double numerator, double denominator) {
  if (std::isinf(denominator) && denominator > 0) {
    return chiSquareUpper(x * numerator, numerator);
  }
  return bm::cdf(bm::complement(bm::fisher_f(numerator, denominator), x));
}

}  // namespace fettle::maths
