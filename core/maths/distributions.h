#pragma once

namespace fettle::maths {

// Probabilities and quantiles by Boost.Math. "Lower" is P(X <= x), "upper" is P(X > x). Degrees of freedom
// are positive reals; where infinity is allowed the limiting distribution is used. Arguments outside
// (probability not strictly between 0 and 1, degrees of freedom not positive) throw std::domain_error.

double normalQuantile(double probability);
double normalLower(double x);
double normalUpper(double x);

/// Student's t; infinite degrees of freedom give the normal distribution.
double studentQuantile(double probability, double degreesOfFreedom);
double studentLower(double t, double degreesOfFreedom);
double studentUpper(double t, double degreesOfFreedom);

double chiSquareQuantile(double probability, double degreesOfFreedom);
double chiSquareLower(double x, double degreesOfFreedom);
double chiSquareUpper(double x, double degreesOfFreedom);

/// Fisher's F; an infinite denominator gives chi-square divided by its degrees of freedom.
double fQuantile(double probability, double numerator, double denominator);
double fLower(double x, double numerator, double denominator);
double fUpper(double x, double numerator, double denominator);

}  // namespace fettle::maths
