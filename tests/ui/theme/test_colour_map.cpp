#include "ui/theme/colour_map.h"

#include <QtTest>

#include "tests/support/test_main.h"

using fettle::ui::colourAt;
using fettle::ui::lightness;

namespace {

QRgb heightColour(double part) {
  return colourAt(fettle::ui::heightColours(), part);
}

/// Of a difference from -1 to 1.
QRgb differenceColour(double difference) {
  return colourAt(fettle::ui::differenceColours(), (difference + 1) / 2);
}

}  // namespace

class TestColourMap : public QObject {
  Q_OBJECT

 private slots:
  void lightnessOfKnownColours();
  void heightsGrowLighterEvenly();
  void heightsLieBetweenPublishedColours();
  void differencesAreWhiteInTheMiddle();
  void blankIsTransparent();
};

// CIE 15:2004: white has L* 100, black 0, and Y = 0.1842 (sRGB grey 119) gives L* 50.03; worked by hand.
void TestColourMap::lightnessOfKnownColours() {
  QVERIFY(std::abs(lightness(qRgb(255, 255, 255)) - 100) < 0.01);
  QVERIFY(std::abs(lightness(qRgb(0, 0, 0))) < 0.01);
  QVERIFY(std::abs(lightness(qRgb(119, 119, 119)) - 50.03) < 0.1);
}

// Uniform means equal steps look equal: L* leaves a straight line by no more than 2 of 100, about the step
// an eye tells apart.
void TestColourMap::heightsGrowLighterEvenly() {
  const double low = lightness(heightColour(0)), high = lightness(heightColour(1));
  double before = low - 1;
  for (int i = 0; i <= 255; ++i) {
    const double t = i / 255.0, here = lightness(heightColour(t));
    QVERIFY(here > before - 0.3);  // rounding to whole colour steps
    QVERIFY2(std::abs(here - (low + t * (high - low))) < 2, qPrintable(QString::number(t)));
    before = here;
  }
}

// The same map at five evenly spaced places, from memory of its published table: an independent check of
// the twelve it is drawn through. Two colour steps of 255 for rounding, and the bends between the twelve.
void TestColourMap::heightsLieBetweenPublishedColours() {
  const QRgb expected[] = {0xff00204d, 0xff414d6b, 0xff7c7b78, 0xffbcaf6f, 0xffffea46};
  for (int i = 0; i < 5; ++i) {
    const QRgb colour = heightColour(i / 4.0);
    QVERIFY2(std::abs(qRed(colour) - qRed(expected[i])) <= 2 &&
                 std::abs(qGreen(colour) - qGreen(expected[i])) <= 2 &&
                 std::abs(qBlue(colour) - qBlue(expected[i])) <= 2,
             qPrintable(QColor(colour).name() + " expected " + QColor(expected[i]).name()));
  }
}

void TestColourMap::differencesAreWhiteInTheMiddle() {
  QVERIFY(lightness(differenceColour(0)) > 99);
  for (int i = 1; i <= 100; ++i) {
    const double t = i / 100.0;
    QVERIFY(lightness(differenceColour(t)) <= lightness(differenceColour(t - 0.01)));
    QVERIFY(lightness(differenceColour(-t)) <= lightness(differenceColour(0.01 - t)));
  }
  QVERIFY(qBlue(differenceColour(-1)) > qRed(differenceColour(-1)));
  QVERIFY(qBlue(differenceColour(1)) < qRed(differenceColour(1)));
  QCOMPARE(differenceColour(-5), differenceColour(-1));
}

void TestColourMap::blankIsTransparent() {
  QCOMPARE(qAlpha(heightColour(std::nan(""))), 0);
  QCOMPARE(qAlpha(differenceColour(std::nan(""))), 0);
  QCOMPARE(qAlpha(heightColour(7)), 255);
}

FETTLE_TEST(TestColourMap)
#include "test_colour_map.moc"
