#include <QTest>
#include <algorithm>
#include <cmath>

#include "core/maths/control_loop.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;

namespace {

double at(const LoopResponse& response, double time) {
  const auto i = static_cast<std::size_t>(std::lround(time / response.time[1]));
  return response.output.at(i);
}

/// A loop that meets no limit.
ControlLoop unlimited(const DeadTimeModel& plant, const PidSetting& controller, double period) {
  ControlLoop loop;
  loop.plant = plant;
  loop.controller = controller;
  loop.period = period;
  loop.lowest = -1e9;
  loop.highest = 1e9;
  return loop;
}

}  // namespace

class TestControlLoop : public QObject {
  Q_OBJECT

 private slots:
  // SciPy 1.10 signal.step of the closed loops as transfer functions: dead time as a Padé quotient of order
  // 8 (order 6 differs by under 0.5 % of the step), PI on the error, Kd·s/(1 + s·Td/10) on the output;
  // answers to a unit step of target and of a load at the input, at 2, 4, 6, 8, 12, 20, 40, 80 half dead
  // times. The Padé quotient rings just after the first dead time, so that time (2) is left out.
  void closedLoopsAgreeWithSciPy() {
    const struct {
      const char* name;
      DeadTimeModel plant;
      PidSetting controller;
      double target[7], load[7];
    } cases[] = {{"SIMC",
                  {500, 140, 8},
                  {140.0 / (500 * 16), 64, 0},
                  {0.51672, 0.93472, 1.1215, 1.13597, 1.05737, 1.01326, 1.00068},
                  {27.77441, 46.83237, 51.24866, 40.39799, 21.17111, 4.82062, 0.24822}},
                 {"AMIGO",
                  {500, 140, 8},
                  amigoPid({500, 140, 8}),
                  {0.49128, 0.82269, 1.01319, 1.18853, 1.15501, 1.00048, 1.00004},
                  {27.74213, 41.40043, 44.86884, 39.26286, 16.19907, -0.61596, 0.00595}},
                 {"Ziegler-Nichols",
                  {1, 10, 1},
                  {12, 2, 0.5},
                  {1.43029, 1.60459, 1.07641, 1.03542, 0.97894, 1.0, 1.0},
                  {0.09498, 0.06353, 0.00576, -0.00527, -0.00085, 0, 0}}};
    const double halves[] = {4, 6, 8, 12, 20, 40, 80};
    for (const auto& c : cases) {
      ControlLoop loop = unlimited(c.plant, c.controller, c.plant.deadTime / 400);
      loop.target = 1;
      const LoopResponse toTarget = simulateLoop(loop, 45 * c.plant.deadTime);
      loop.target = 0;
      loop.load = -1;
      const LoopResponse toLoad = simulateLoop(loop, 45 * c.plant.deadTime);
      const double largest = *std::max_element(std::begin(c.load), std::end(c.load));
      for (int i = 0; i < 7; ++i) {
        const double time = halves[i] * c.plant.deadTime / 2;
        QVERIFY2(std::abs(at(toTarget, time) - c.target[i]) < 0.01,
                 qPrintable(QStringLiteral("%1 at %2: %3").arg(c.name).arg(time).arg(at(toTarget, time))));
        QVERIFY2(std::abs(at(toLoad, time) - c.load[i]) < 0.01 * largest,
                 qPrintable(QStringLiteral("%1 load %2: %3").arg(c.name).arg(time).arg(at(toLoad, time))));
      }
    }
  }

  // Skogestad 2003 (from memory): SIMC with the closed loop as slow as the dead time overshoots a target
  // step by 4 %, IAE 2.17 dead times; simulated elsewhere 4.06 % and 2.169.
  void simcOvershoot() {
    const DeadTimeModel plant{1, 6, 1};
    ControlLoop loop = unlimited(plant, simcPi(plant, 1), 0.001);
    loop.target = 1;
    const LoopResponse response = simulateLoop(loop, 60);
    double area = 0;
    for (const double output : response.output) {
      area += std::abs(1 - output) * loop.period;
    }
    VERIFY_NEAR(*std::max_element(response.output.begin(), response.output.end()), 1.0406, 0.001);
    VERIFY_NEAR(area, 2.169, 0.005);
  }

  // With the loop open at its limit the answer is the model's own: exact at any dead time and period.
  void saturatedAnswerIsTheModelsOwn() {
    for (const double delay : {0.0, 0.35, 2.0, 7.3}) {
      ControlLoop loop;
      loop.plant = {300, 40, delay};
      loop.controller = {1e6, 1e9, 0};
      loop.target = 1e6;
      loop.rest = 25;
      loop.period = 0.5;
      const LoopResponse response = simulateLoop(loop, 60);
      for (std::size_t i = 0; i < response.time.size(); ++i) {
        VERIFY_NEAR(response.output[i], 25 + loop.plant.unitStep(response.time[i]), 1e-9);
        QCOMPARE(response.asked[i], 1.0);
      }
    }
  }

  // Sampled control by hand: K = 1, T = 1/ln 2, period 1, no dead time, PI with Kc = 0.5, Ti = 1, target 1:
  // y1 = 0.5·u0, u0 = 0.5·1 + 0.5·1 = 1; e1 = 0.5, I = 0.75, u1 = 1; y2 = 0.25 + 0.5 = 0.75;
  // e2 = 0.25, I = 0.875, u2 = 1; y3 = 0.875.
  void sampledByHand() {
    ControlLoop loop = unlimited({1, 1 / std::log(2.0), 0}, {0.5, 1, 0}, 1);
    loop.target = 1;
    const LoopResponse response = simulateLoop(loop, 3);
    QCOMPARE(response.time.size(), std::size_t(4));
    VERIFY_NEAR(response.output[1], 0.5, 1e-12);
    VERIFY_NEAR(response.output[2], 0.75, 1e-12);
    VERIFY_NEAR(response.output[3], 0.875, 1e-12);
  }

  // A long way at full input. A simulation written for this test in Python in steps of 5 ms, the plant
  // exact for a held input: no overshoot and settled after 211.82 s; with an integral that goes on growing
  // 72 °C of overshoot and 352.1 s. Tolerances: a few samples of 0.1 s.
  void integralIsHeldWhileSaturated() {
    ControlLoop loop;
    loop.plant = {500, 140, 8};
    loop.controller = simcPi(loop.plant, 8);
    loop.rest = 25;
    loop.target = 215;
    const LoopResponse held = simulateLoop(loop, 2000);
    QVERIFY(*std::max_element(held.output.begin(), held.output.end()) < 215.1);
    QVERIFY(*std::max_element(held.asked.begin(), held.asked.end()) <= 1);
    QVERIFY(*std::min_element(held.asked.begin(), held.asked.end()) >= 0);
    const auto settled = settledFrom(held, 215, 1, 2000);
    QVERIFY(settled);
    VERIFY_NEAR(*settled, 211.82, 0.5);
    VERIFY_NEAR(at(held, 1900), 215, 0.01);
  }

  void settling() {
    LoopResponse response{{0, 1, 2, 3, 4}, {0, 9.5, 12, 10.5, 8}, {}};
    QCOMPARE(settledFrom(response, 10, 1, 3).value(), 3.0);
    QVERIFY(!settledFrom(response, 10, 1, 4));
    QVERIFY(!settledFrom(response, 10, 1, -1));
    QCOMPARE(settledFrom(response, 5, 50, 4).value(), 0.0);
  }
};

FETTLE_TEST(TestControlLoop)
#include "test_control_loop.moc"
