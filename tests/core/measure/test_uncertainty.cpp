#include "core/measure/uncertainty.h"

#include <QTest>
#include <array>
#include <cmath>

#include "core/maths/distributions.h"
#include "tests/support/near.h"
#include "tests/support/test_main.h"

using namespace fettle;

/// Combined uncertainties against the worked examples of JCGM 100:2008.
class TestUncertainty : public QObject {
  Q_OBJECT

 private slots:
  // JCGM 100:2008, annex H.1: end gauge of 50 mm, in nm, from the unrounded inputs of the example.
  // Published: u_c = 32 nm, degrees of freedom 16.7, t(0.995, 16) = 2.92, U(99 %) = 93 nm.
  void endGauge() {
    constexpr double length = 50000623;  // nm
    const Contribution comparison =
        combined(std::array{Contribution{5.8, 24}, Contribution{3.9, 5}, Contribution{6.7, 8}});
    VERIFY_NEAR(comparison.u, 9.7, 0.05);
    const double temperature = -0.1;
    const std::array parts{
        Contribution{25, 18},
        comparison,
        Contribution{length * std::abs(temperature) * 1e-6 / std::sqrt(3.0), 50},
        Contribution{length * 11.5e-6 * 0.05 / std::sqrt(3.0), 2},
    };
    VERIFY_NEAR(parts[2].u, 2.9, 0.05);
    VERIFY_NEAR(parts[3].u, 16.6, 0.05);
    const Quantity gauge = combinedQuantity(length + 215, "mm", parts);
    QCOMPARE(gauge.value, 50000838.0);
    VERIFY_NEAR(*gauge.u, 31.7, 0.05);
    VERIFY_NEAR(gauge.dof, 16.7, 0.1);
    const double expanded = maths::studentQuantile(0.995, 16) * *gauge.u;
    // The example prints 2.92·32 = 93; without rounding in between it is 92.6.
    VERIFY_NEAR(expanded, 92.6, 0.2);
  }

  // JCGM 100:2008, G.4.2: relative 0.25 %, 0.57 %, 0.82 % of 10, 5, 15 readings give 1.03 %, 19.0, U = 2.2
  // %.
  void welchSatterthwaite() {
    const std::array parts{Contribution{0.25, 9}, Contribution{0.57, 4}, Contribution{0.82, 14}};
    const Quantity product = combinedQuantity(100, "%", parts);
    VERIFY_NEAR(*product.u, 1.03, 0.005);
    VERIFY_NEAR(product.dof, 19.0, 0.05);
    VERIFY_NEAR(*expandedUncertainty(product), 2.2, 0.05);
  }

  void nothingUncertainIsExact() {
    const Contribution none = combined({});
    QCOMPARE(none.u, 0.0);
    QVERIFY(std::isinf(none.dof));
  }

  // JCGM 100:2008, 4.2.3 and H.3.1 for the mean; 4.3.7 for the rectangular parts; by hand: s of 1, 2, 3
  // is 1.
  void meanOfThree() {
    const Instrument instrument{"rule", 0.5, 0.3, 0, "mm"};
    const Quantity mean = meanOfReadings(std::array{1.0, 2.0, 3.0}, instrument, "mm");
    const double variance = 1.0 / 3 + 0.25 / 36 + 0.09 / 3;
    QCOMPARE(mean.value, 2.0);
    VERIFY_NEAR(*mean.u, std::sqrt(variance), 1e-12);
    VERIFY_NEAR(mean.dof, variance * variance / (1.0 / 9 / 2), 1e-9);
    const Quantity withoutError =
        meanOfReadingsWithoutCommonError(std::array{1.0, 2.0, 3.0}, instrument, "mm");
    VERIFY_NEAR(*withoutError.u, std::sqrt(1.0 / 3 + 0.25 / 36), 1e-12);
  }

  void oneReadingHasTheInstrumentOnly() {
    const Quantity one = meanOfReadings(std::array{2.0}, {"rule", 0.5, 0.3, 0, "mm"}, "mm");
    VERIFY_NEAR(*one.u, std::sqrt(0.25 / 12 + 0.09 / 3), 1e-12);
    QVERIFY(std::isinf(one.dof));
  }

  void aLimitOfErrorMayGrowWithTheReading() {
    const Instrument meter{"meter", 0, 0.2, 0.01, "ohm"};
    VERIFY_NEAR(meter.limitOfError(-100), 1.2, 1e-12);
    VERIFY_NEAR(meter.standardUncertainty(100), 1.2 / std::sqrt(3.0), 1e-12);
  }

  void noReadingsAreTheCallersFault() {
    QVERIFY_THROWS_EXCEPTION(std::invalid_argument, meanOfReadings({}, {"rule", 0.5, 0.3, 0, "mm"}, "mm"));
  }
};

FETTLE_TEST(TestUncertainty)
#include "test_uncertainty.moc"
