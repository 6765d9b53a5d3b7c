#include <QTest>

#include "core/maths/least_squares.h"
#include "core/maths/straight_line.h"
#include "tests/reference/data_nist_linear.h"
#include "tests/support/digits.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using namespace fettle::tests;

namespace {

Eigen::VectorXd observationsOf(const LinearSet& set) {
  Eigen::VectorXd y(static_cast<Eigen::Index>(set.rows.size()));
  for (Eigen::Index i = 0; i < y.size(); ++i) {
    y[i] = set.rows[static_cast<std::size_t>(i)][0];
  }
  return y;
}

Eigen::MatrixXd designOf(const LinearSet& set) {
  const auto columns = static_cast<Eigen::Index>(set.coefficients.size());
  Eigen::MatrixXd design(static_cast<Eigen::Index>(set.rows.size()), columns);
  for (Eigen::Index i = 0; i < design.rows(); ++i) {
    const auto& row = set.rows[static_cast<std::size_t>(i)];
    for (Eigen::Index j = 0; j < columns; ++j) {
      const auto column = static_cast<std::size_t>(j);
      if (set.degree == 0) {
        design(i, j) = j == 0 ? 1 : row[column];
      } else {
        design(i, j) = std::pow(row[1], set.intercept ? j : j + 1);
      }
    }
  }
  return design;
}

const std::vector<const LinearSet*> allSets{&norris,   &pontius,  &noInt1,   &wampler1, &wampler2,
                                            &wampler3, &wampler4, &wampler5, &longley,  &filip};

}  // namespace

/// Certified values of the NIST Statistical Reference Datasets, linear regression.
class TestNistLinear : public QObject {
  Q_OBJECT

 private slots:
  /// Limits: what double precision allows at the conditioning of each set, a digit or two below what the
  /// solver reaches, so that another processor's rounding does not fail the test.
  void coefficients_data() {
    QTest::addColumn<int>("index");
    QTest::addColumn<double>("coefficientDigits");
    QTest::addColumn<double>("errorDigits");
    QTest::newRow("Norris") << 0 << 11.0 << 11.0;
    QTest::newRow("Pontius") << 1 << 10.0 << 10.0;
    QTest::newRow("NoInt1") << 2 << 13.0 << 13.0;
    QTest::newRow("Wampler1") << 3 << 8.0 << 8.0;
    QTest::newRow("Wampler2") << 4 << 9.0 << 9.0;
    QTest::newRow("Wampler3") << 5 << 8.0 << 9.0;
    QTest::newRow("Wampler4") << 6 << 7.0 << 9.0;
    QTest::newRow("Wampler5") << 7 << 5.0 << 9.0;
    QTest::newRow("Longley") << 8 << 9.0 << 9.0;
    QTest::newRow("Filip") << 9 << 6.0 << 6.0;
  }

  void coefficients() {
    QFETCH(int, index);
    QFETCH(double, coefficientDigits);
    QFETCH(double, errorDigits);
    const LinearSet& set = *allSets[static_cast<std::size_t>(index)];
    const auto fit = fitLeastSquares(designOf(set), observationsOf(set));
    QVERIFY2(fit.has_value(), fit ? "" : fit.error().c_str());
    QCOMPARE(fit->degreesOfFreedom, static_cast<double>(set.rows.size() - set.coefficients.size()));
    const Eigen::VectorXd errors = fit->standardErrors();
    double worst = 15;
    double worstError = 15;
    for (std::size_t j = 0; j < set.coefficients.size(); ++j) {
      const auto at = static_cast<Eigen::Index>(j);
      worst = std::min(worst, matchingDigits(fit->coefficients[at], set.coefficients[j]));
      worstError = std::min(worstError, matchingDigits(errors[at], set.standardErrors[j]));
      VERIFY_DIGITS("coefficient", fit->coefficients[at], set.coefficients[j], coefficientDigits);
      VERIFY_DIGITS("standard error", errors[at], set.standardErrors[j], errorDigits);
    }
    VERIFY_DIGITS("residual sd", fit->residualStandardDeviation(), set.residualStandardDeviation,
                  errorDigits);
    qInfo("%s: coefficients %.1f digits, standard errors %.1f", set.name, worst, worstError);
  }

  void norrisAsStraightLine() {
    std::vector<double> x;
    std::vector<double> y;
    for (const auto& row : norris.rows) {
      y.push_back(row[0]);
      x.push_back(row[1]);
    }
    const auto line = fitStraightLine(x, y);
    QVERIFY(line.has_value());
    VERIFY_DIGITS("intercept", line->intercept, norris.coefficients[0], 11);
    VERIFY_DIGITS("slope", line->slope, norris.coefficients[1], 13);
    VERIFY_DIGITS("intercept error", line->interceptStandardError(), norris.standardErrors[0], 13);
    VERIFY_DIGITS("slope error", line->slopeStandardError(), norris.standardErrors[1], 13);
    VERIFY_DIGITS("residual sd", line->residualStandardDeviation, norris.residualStandardDeviation, 13);
  }
};

FETTLE_TEST(TestNistLinear)
#include "test_nist_linear.moc"
