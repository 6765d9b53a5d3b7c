#include "core/measure/uncertainty.h"

#include <QTest>
#include <array>
#include <cmath>

#include "core/maths/distributions.h"
#include "tests/support/test_main.h"

using namespace fettle;

/// Combined uncertainties against the worked examples of JCGM 100:2008.
class TestUncertainty : public QObject {
  Q_OBJECT

  static bool near(double value, double expected, double within) {
    return std::abs(value - expected) <= within;
  }

 private slots:
  // JCGM 100:2008, annex H.1: end gauge of 50 mm, in nm, from the unrounded inputs of the example.
  // Published: u_c = 32 nm, degrees of freedom 16.7, t(0.995, 16) = 2.92, U(99 %) = 93 nm.
  void endGauge() {
    constexpr double length = 50000623;  // nm
    const Contribution comparison =
        combined(std::array{Contribution{5.8, 24}, Contribution{3.9, 5}, Contribution{6.7, 8}});
    QVERIFY2(near(comparison.u, 9.7, 0.05), qPrintable(QString::number(comparison.u)));
    const double temperature = -0.1;
    const std::array parts{
        Contribution{25, 18},
        comparison,
        Contribution{length * std::abs(temperature) * 1e-6 / std::sqrt(3.0), 50},
        Contribution{length * 11.5e-6 * 0.05 / std::sqrt(3.0), 2},
    };
    QVERIFY2(near(parts[2].u, 2.9, 0.05), qPrintable(QString::number(parts[2].u)));
    QVERIFY2(near(parts[3].u, 16.6, 0.05), qPrintable(QString::number(parts[3].u)));
    const Quantity gauge = combinedQuantity(length + 215, "mm", parts);
    QCOMPARE(gauge.value, 50000838.0);
    QVERIFY2(near(*gauge.u, 31.7, 0.05), qPrintable(QString::number(*gauge.u)));
    QVERIFY2(near(gauge.dof, 16.7, 0.1), qPrintable(QString::number(gauge.dof)));
    const double expanded = maths::studentQuantile(0.995, 16) * *gauge.u;
    // The example prints 2.92·32 = 93; without rounding in between it is 92.6.
    QVERIFY2(near(expanded, 92.6, 0.2), qPrintable(QString::number(expanded)));
  }

  // JCGM 100:2008, G.4.2: relative 0.25 %, 0.57 %, 0.82 % of 10, 5, 15 readings give 1.03 %, 19.0, U = 2.2
  // %.
  void welchSatterthwaite() {
    const std::array parts{Contribution{0.25, 9}, Contribution{0.57, 4}, Contribution{0.82, 14}};
    const Quantity product = combinedQuantity(100, "%", parts);
    QVERIFY(near(*product.u, 1.03, 0.005));
    QVERIFY(near(product.dof, 19.0, 0.05));
    QVERIFY(near(*expandedUncertainty(product), 2.2, 0.05));
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
    QVERIFY(near(*mean.u, std::sqrt(variance), 1e-12));
    QVERIFY(near(mean.dof, variance * variance / (1.0 / 9 / 2), 1e-9));
    const Quantity withoutError =
        meanOfReadingsWithoutCommonError(std::array{1.0, 2.0, 3.0}, instrument, "mm");
    QVERIFY(near(*withoutError.u, std::sqrt(1.0 / 3 + 0.25 / 36), 1e-12));
  }

  void oneReadingHasTheInstrumentOnly() {
    const Quantity one = meanOfReadings(std::array{2.0}, {"rule", 0.5, 0.3, 0, "mm"}, "mm");
    QVERIFY(near(*one.u, std::sqrt(0.25 / 12 + 0.09 / 3), 1e-12));
    QVERIFY(std::isinf(one.dof));
  }

  void aLimitOfErrorMayGrowWithTheReading() {
    const Instrument meter{"meter", 0, 0.2, 0.01, "ohm"};
    QVERIFY(near(meter.limitOfError(-100), 1.2, 1e-12));
    QVERIFY(near(meter.standardUncertainty(100), 1.2 / std::sqrt(3.0), 1e-12));
  }

  void noReadingsAreTheCallersFault() {
    QVERIFY_THROWS_EXCEPTION(std::invalid_argument, meanOfReadings({}, {"rule", 0.5, 0.3, 0, "mm"}, "mm"));
  }
};

FETTLE_TEST(TestUncertainty)
#include "test_uncertainty.moc"
