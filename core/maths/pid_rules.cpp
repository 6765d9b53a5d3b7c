#include "core/maths/pid_rules.h"

#include <algorithm>

namespace fettle::maths {

PidSetting simcPi(const DeadTimeModel& model, double closedLoopTime) {
  const double pace = closedLoopTime + model.deadTime;
  return {model.timeConstant / (model.gain * pace), std::min(model.timeConstant, 4 * pace), 0};
}

PidSetting zieglerNichols(const DeadTimeModel& model) {
  const double delay = model.deadTime;
  return {1.2 * model.timeConstant / (model.gain * delay), 2 * delay, delay / 2};
}

PidSetting zieglerNichols(const UltimatePoint& point) {
  return {0.6 * point.gain, point.period / 2, point.period / 8};
}

PidSetting tyreusLuyben(const UltimatePoint& point) {
  return {point.gain / 2.2, 2.2 * point.period, point.period / 6.3};
}

PidSetting amigoPid(const DeadTimeModel& model) {
  const double lag = model.timeConstant;
  const double delay = model.deadTime;
  return {(0.2 + 0.45 * lag / delay) / model.gain, delay * (0.4 * delay + 0.8 * lag) / (delay + 0.1 * lag),
          0.5 * delay * lag / (0.3 * delay + lag)};
}

}  // namespace fettle::maths
