#include "ui/charts/series_style.h"

#include <QtTest>
#include <set>

#include "tests/support/test_main.h"
#include "tests/ui/charts/sample_charts.h"

using namespace fettle;
using namespace fettle::ui;

namespace {

constexpr SeriesRole roles[] = {SeriesRole::measured, SeriesRole::excluded,   SeriesRole::model,
                                SeriesRole::trace,    SeriesRole::comparison, SeriesRole::band,
                                SeriesRole::outline,  SeriesRole::planned,    SeriesRole::reached,
                                SeriesRole::fault};

SeriesStyle style(SeriesRole role, int hue, const Palette& palette) {
  return styleOf(tests::series("s", role, {1}, {1}, hue), palette);
}

/// A style as black and white show it, without where it closes.
QString withoutColour(const SeriesStyle& s) {
  QString dashes;
  for (const double length : s.pen.dashPattern()) {
    dashes += QString::number(length) + ' ';
  }
  return QString("%1 %2 %3 %4 %5 %6")
      .arg(static_cast<int>(s.mark))
      .arg(s.pen.widthF())
      .arg(s.isLine)
      .arg(s.isArea)
      .arg(s.isClosed)
      .arg(dashes);
}

}  // namespace

class TestSeriesStyle : public QObject {
  Q_OBJECT

 private slots:
  void rolesDifferWithoutColour();
  void huesDifferOnPaper_data();
  void huesDifferOnPaper();
  void screenLinesArePlain();
};

void TestSeriesStyle::rolesDifferWithoutColour() {
  for (const auto* palette : {&Palette::light(), &Palette::print()}) {
    std::set<QString> seen;
    for (const auto role : roles) {
      seen.insert(withoutColour(style(role, 0, *palette)));
    }
    QCOMPARE(seen.size(), std::size(roles));
  }
}

void TestSeriesStyle::huesDifferOnPaper_data() {
  QTest::addColumn<int>("role");
  QTest::newRow("measured") << static_cast<int>(SeriesRole::measured);
  QTest::newRow("model") << static_cast<int>(SeriesRole::model);
  QTest::newRow("trace") << static_cast<int>(SeriesRole::trace);
  QTest::newRow("outline") << static_cast<int>(SeriesRole::outline);
}

void TestSeriesStyle::huesDifferOnPaper() {
  QFETCH(int, role);
  std::set<QString> seen;
  for (int hue = 0; hue < 4; ++hue) {
    seen.insert(withoutColour(style(static_cast<SeriesRole>(role), hue, Palette::print())));
  }
  QCOMPARE(seen.size(), 4U);
}

void TestSeriesStyle::screenLinesArePlain() {
  QCOMPARE(style(SeriesRole::model, 3, Palette::light()).pen.style(), Qt::SolidLine);
  QVERIFY(style(SeriesRole::comparison, 0, Palette::light()).pen.style() == Qt::CustomDashLine);
  QCOMPARE(style(SeriesRole::fault, 2, Palette::dark()).pen.color(), Palette::dark().fault);
}

FETTLE_TEST(TestSeriesStyle)
#include "test_series_style.moc"
