#pragma once
#include <vector>

namespace fettle::tests {

struct PointList {
  std::vector<double> x;
  std::vector<double> y;
};

/// Graybill and Iyer 1994, Regression Analysis: Concepts and Applications, p. 431.
inline const PointList thermostat{{96, 98, 100, 102, 104, 106, 108, 110},
                                  {95.71, 98.16, 99.52, 102.09, 103.79, 106.18, 108.14, 110.21}};

/// Graybill and Iyer 1994, p. 433.
inline const PointList chamber{
    {0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100},
    {206.36, 225.52, 252.18, 289.33, 318.11, 349.49, 383.03, 410.7, 444.4, 469.14, 501.16}};

/// Arsenic added and found, Greenwell and Schubert Kabban 2014, R Journal 6/1.
inline const PointList arsenic{
    {0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 6, 6, 6, 6, 7, 7, 7, 7},
    {0.17, 0.25, 0.01, 0.12, 1.25, 0.86, 1.25, 1.1,  2.01, 2.03, 2.14, 1.74, 3.18, 2.99, 3.23, 3.37,
     3.91, 3.9,  3.61, 4.27, 4.88, 5.33, 4.96, 4.98, 6.09, 6.17, 6.07, 5.97, 6.67, 7.02, 7.14, 7.3}};

/// Worked example of DIN 32645.
inline const PointList din32645{{0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5},
                                {3060, 3522, 3707, 4280, 5058, 5510, 5703, 6205, 7156, 7178}};

}  // namespace fettle::tests
