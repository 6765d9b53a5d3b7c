#include "ui/report/page_flow.h"

#include <QTest>

#include "tests/support/test_main.h"

using namespace fettle::ui;

/// Expected: by hand, on pages of 100.
class TestPageFlow : public QObject {
  Q_OBJECT

  static Strip strip(double height, bool withNext = false, double before = 0) {
    Strip made;
    made.height = height;
    made.withNext = withNext;
    made.before = before;
    return made;
  }

  /// "strip@page:y" of all places.
  static QString placed(const std::vector<Strip>& strips) {
    QStringList text;
    for (const auto& place : placedOnPages(strips, 100)) {
      text << QStringLiteral("%1@%2:%3").arg(place.strip).arg(place.page).arg(place.y);
    }
    return text.join(' ');
  }

 private slots:
  void fromTopToBottom() {
    QCOMPARE(placed({}), QString());
    QCOMPARE(placed({strip(40), strip(60), strip(1)}), QString("0@0:0 1@0:40 2@1:0"));
  }

  void spaceAboveNotAtTheTop() {
    QCOMPARE(placed({strip(40, false, 9), strip(40, false, 10), strip(20, false, 5)}),
             QString("0@0:0 1@0:50 2@1:0"));
  }

  void togetherOrOnTheNextPage() {
    QCOMPARE(placed({strip(70), strip(10, true), strip(30)}), QString("0@0:0 1@1:0 2@1:10"));
    QCOMPARE(placed({strip(60), strip(10, true), strip(30)}), QString("0@0:0 1@0:60 2@0:70"));
  }

  void tallerThanAPageIsParted() {
    QCOMPARE(placed({strip(50), strip(60, true), strip(60, true), strip(30)}),
             QString("0@0:0 1@1:0 2@2:0 3@2:60"));
  }

  void newPageOnlyBelowSomething() {
    Strip first = strip(10);
    first.newPage = true;
    QCOMPARE(placed({first, strip(10), first}), QString("0@0:0 1@0:10 2@1:0"));
  }

  // Head strips 0 and 1 (one row of two lines), rows 2 to 4.
  void headsAreRepeated() {
    std::vector<Strip> strips{strip(10, true), strip(10, true), strip(40), strip(40), strip(40)};
    for (std::size_t i = 2; i < strips.size(); ++i) {
      strips[i].heads = 2;
    }
    QCOMPARE(placed(strips), QString("0@0:0 1@0:10 2@0:20 3@0:60 0@1:0 1@1:10 4@1:20"));
  }
};

FETTLE_TEST(TestPageFlow)
#include "test_page_flow.moc"
