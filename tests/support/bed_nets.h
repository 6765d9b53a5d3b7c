#pragma once
#include <QTest>
#include <algorithm>
#include <cmath>
#include <functional>

#include "core/steps/contract/step.h"

#include "tests/support/step_bench.h"

namespace fettle::tests {

using Height = std::function<double(double x, double y)>;

/// A net of lines 50 mm apart from 0, 0.
inline Json netOf(int columns, int rows, const Height& height) {
  Json grid{{"x", Json::array()}, {"y", Json::array()}, {"z", Json::array()}};
  for (int i = 0; i < columns; ++i) {
    grid["x"].push_back(50 * i);
  }
  for (int j = 0; j < rows; ++j) {
    grid["y"].push_back(50 * j);
    Json line = Json::array();
    for (int i = 0; i < columns; ++i) {
      line.push_back(height(50 * i, 50 * j));
    }
    grid["z"].push_back(line);
  }
  return {{"grid", grid}};
}

inline Json pointsOf(const Json& net) {
  Json points = Json::array();
  const Json& grid = net["grid"];
  for (std::size_t j = 0; j < grid["y"].size(); ++j) {
    for (std::size_t i = 0; i < grid["x"].size(); ++i) {
      points.push_back({{"x", grid["x"][i]}, {"y", grid["y"][j]}, {"z", grid["z"][j][i]}});
    }
  }
  return {{"points", points}};
}

inline double flat(double, double) {
  return 0;
}

}  // namespace fettle::tests
