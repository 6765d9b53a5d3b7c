#include "ui/theme/palette.h"

#include <QtTest>

#include "tests/support/test_main.h"

using fettle::ui::contrastRatio;
using fettle::ui::Palette;
using fettle::ui::readable;

class TestPalette : public QObject {
  Q_OBJECT

 private slots:
  void contrastOfKnownPairs();
  void textIsReadable_data();
  void textIsReadable();
  void seriesAreTold_data();
  void seriesAreTold();
  void readableKeepsWhatIsReadable();
};

// WCAG 2.1: black on white is 21; #777777 on white is 4.48, just under the limit (WebAIM's worked example).
void TestPalette::contrastOfKnownPairs() {
  QCOMPARE(contrastRatio(QColor("#000000"), QColor("#ffffff")), 21.0);
  QCOMPARE(std::round(100 * contrastRatio(QColor("#777777"), QColor("#ffffff"))) / 100, 4.48);
  QCOMPARE(contrastRatio(QColor("#336699"), QColor("#336699")), 1.0);
}

void TestPalette::textIsReadable_data() {
  QTest::addColumn<const Palette*>("palette");
  QTest::newRow("light") << &Palette::light();
  QTest::newRow("dark") << &Palette::dark();
  QTest::newRow("print") << &Palette::print();
}

// At least 4.5 for every colour of words on every ground it stands on (WCAG 2.1, 1.4.3). On a selection
// only text stands as it is; dim and accent words pass through readable() there.
void TestPalette::textIsReadable() {
  QFETCH(const Palette*, palette);
  const Palette& p = *palette;
  const std::pair<QColor, QColor> pairs[] = {{p.text, p.ground},  {p.text, p.panel},
                                             {p.text, p.list},    {p.text, p.selection},
                                             {p.dim, p.ground},   {p.dim, p.panel},
                                             {p.dim, p.list},     {p.accent, p.ground},
                                             {p.accent, p.panel}, {p.caution, p.cautionGround},
                                             {p.fault, p.ground}, {p.fault, p.panel},
                                             {p.pass, p.ground},  {p.pass, p.panel},
                                             {p.pass, p.list},    {p.caution, p.list},
                                             {p.caution, p.panel}};
  for (const auto& words : {p.dim, p.accent}) {
    QVERIFY(contrastRatio(readable(words, p.selection), p.selection) >= 4.5);
  }
  for (const auto& [words, ground] : pairs) {
    const double ratio = contrastRatio(words, ground);
    QVERIFY2(ratio >= 4.5,
             qPrintable(words.name() + " on " + ground.name() + ": " + QString::number(ratio)));
  }
}

void TestPalette::seriesAreTold_data() {
  textIsReadable_data();
}

// Lines and marks differ from the panel by at least 1.9: the lightest of the set, orange on white, has 2.2.
// The names beside them are made readable.
void TestPalette::seriesAreTold() {
  QFETCH(const Palette*, palette);
  for (int hue = 0; hue < 7; ++hue) {
    QVERIFY(contrastRatio(palette->series(hue), palette->panel) >= 1.9);
    QVERIFY(contrastRatio(readable(palette->series(hue), palette->panel), palette->panel) >= 4.5);
    QVERIFY(palette->series(hue) != palette->series(hue + 1));
  }
  QCOMPARE(palette->series(7), palette->series(0));
  QCOMPARE(palette->series(-1), palette->series(6));
}

void TestPalette::readableKeepsWhatIsReadable() {
  const Palette& p = Palette::light();
  QCOMPARE(readable(p.accent, p.panel), p.accent);
  QVERIFY(readable(p.series(4), p.panel) != p.series(4));
}

FETTLE_TEST(TestPalette)
#include "test_palette.moc"
