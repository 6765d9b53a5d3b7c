#include <QTest>

#include "core/maths/curve_fit.h"
#include "tests/reference/data_nist_nonlinear.h"
#include "tests/support/digits.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using namespace fettle::tests;

namespace {

using Model = double (*)(const Eigen::VectorXd& b, double x);

double misra1aModel(const Eigen::VectorXd& b, double x) {
  return b[0] * (1 - std::exp(-b[1] * x));
}
double danWoodModel(const Eigen::VectorXd& b, double x) {
  return b[0] * std::pow(x, b[1]);
}
double chwirut2Model(const Eigen::VectorXd& b, double x) {
  return std::exp(-b[0] * x) / (b[1] + b[2] * x);
}
double thurberModel(const Eigen::VectorXd& b, double x) {
  return (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1 + x * (b[4] + x * (b[5] + x * b[6])));
}

struct Case {
  const NonlinearSet* set;
  Model model;
};

const std::vector<Case> cases{{&misra1a, misra1aModel},
                              {&danWood, danWoodModel},
                              {&chwirut2, chwirut2Model},
                              {&thurber, thurberModel}};

}  // namespace

/// Certified values of the NIST Statistical Reference Datasets, non-linear regression, from both of their
/// starting points (start 1 is the far one), derivatives by differences.
class TestNistNonlinear : public QObject {
  Q_OBJECT

 private slots:
  void certified_data() {
    QTest::addColumn<int>("index");
    QTest::addColumn<int>("start");
    for (std::size_t i = 0; i < cases.size(); ++i) {
      for (int start = 0; start < 2; ++start) {
        QTest::addRow("%s from start %d", cases[i].set->name, start + 1) << static_cast<int>(i) << start;
      }
    }
  }

  void certified() {
    QFETCH(int, index);
    QFETCH(int, start);
    const auto& [set, model] = cases[static_cast<std::size_t>(index)];
    const auto residuals = [&set = *set, model = model](const Eigen::VectorXd& b, Eigen::VectorXd& r) {
      for (Eigen::Index i = 0; i < r.size(); ++i) {
        const auto at = static_cast<std::size_t>(i);
        r[i] = set.y[at] - model(b, set.x[at]);
      }
    };
    const auto& from = set->starts[static_cast<std::size_t>(start)];
    const CurveFit fit =
        fitCurve(residuals, static_cast<Eigen::Index>(set->y.size()),
                 Eigen::Map<const Eigen::VectorXd>(from.data(), static_cast<Eigen::Index>(from.size())));
    QVERIFY2(fit.converged, fit.problem.c_str());
    double worst = 15;
    double worstError = 15;
    for (std::size_t j = 0; j < set->parameters.size(); ++j) {
      const auto at = static_cast<Eigen::Index>(j);
      worst = std::min(worst, matchingDigits(fit.parameters[at], set->parameters[j]));
      worstError = std::min(worstError, matchingDigits(fit.standardErrors[at], set->standardErrors[j]));
      VERIFY_DIGITS("parameter", fit.parameters[at], set->parameters[j], 6);
      VERIFY_DIGITS("standard error", fit.standardErrors[at], set->standardErrors[j], 6);
    }
    VERIFY_DIGITS("residual sum of squares", fit.residualSumOfSquares, set->residualSumOfSquares, 9);
    qInfo("%s: parameters %.1f digits, standard errors %.1f, %d iterations", set->name, worst, worstError,
          fit.iterations);
  }
};

FETTLE_TEST(TestNistNonlinear)
#include "test_nist_nonlinear.moc"
