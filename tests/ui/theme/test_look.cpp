#include "ui/theme/look.h"

#include <QtTest>

#include "tests/support/test_main.h"

using fettle::ui::applyLook;
using fettle::ui::Fonts;
using fettle::ui::fontsOf;
using fettle::ui::Look;
using fettle::ui::Palette;

class TestLook : public QObject {
  Q_OBJECT

 private slots:
  void namesOfLooks();
  void widgetsTakeThePalette();
  void desktopLookFollowsTheDesktop();
  void fontSizes();
  void sheetHasNoPlaceholderLeft();
};

void TestLook::namesOfLooks() {
  QVERIFY(fettle::ui::lookFromText("dark") == Look::dark);
  QVERIFY(fettle::ui::lookFromText("desktop") == Look::desktop);
  QVERIFY(!fettle::ui::lookFromText("Dark blue"));
}

void TestLook::widgetsTakeThePalette() {
  for (const auto look : {Look::dark, Look::light}) {
    const Palette& palette = applyLook(*qApp, look);
    QCOMPARE(&palette, look == Look::dark ? &Palette::dark() : &Palette::light());
    QWidget widget;
    QCOMPARE(widget.palette().color(QPalette::Window), palette.ground);
    QCOMPARE(widget.palette().color(QPalette::Text), palette.text);
  }
}

// The offscreen platform has a light desktop, whatever look was in force before.
void TestLook::desktopLookFollowsTheDesktop() {
  applyLook(*qApp, Look::dark);
  QCOMPARE(&applyLook(*qApp, Look::desktop), &Palette::light());
}

void TestLook::fontSizes() {
  const Fonts fonts = fontsOf();
  QCOMPARE(fonts.base.pointSizeF(), 10.0);
  QCOMPARE(fonts.small.pointSizeF(), 8.5);
  QCOMPARE(fonts.stepTitle.pointSizeF(), 14.0);
  QCOMPARE(fonts.resultValue.weight(), QFont::DemiBold);
  QCOMPARE(fontsOf(12).resultValue.pointSizeF(), 14.4);
}

void TestLook::sheetHasNoPlaceholderLeft() {
  applyLook(*qApp, Look::light);
  QVERIFY(qApp->styleSheet().contains(Palette::light().accent.name()));
  QVERIFY(!qApp->styleSheet().contains('@'));
}

FETTLE_TEST(TestLook)
#include "test_look.moc"
