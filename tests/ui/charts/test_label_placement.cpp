#include "ui/charts/label_placement.h"

#include <QtTest>

#include "tests/support/test_main.h"

using namespace fettle::ui;

class TestLabelPlacement : public QObject {
  Q_OBJECT

 private slots:
  void emptyPlotIsFree();
  void linesAndLabelsCover();
  void bestAvoidsWhatIsDrawn();
  void doubtCounts();
  void nothingOutsideThePlot();
  void anchorsAreSpreadEvenly();
};

const QRectF plot(50, 20, 400, 300);

void TestLabelPlacement::emptyPlotIsFree() {
  QCOMPARE(*Occupancy(plot).covered({100, 100, 60, 14}), 0.0);
}

void TestLabelPlacement::linesAndLabelsCover() {
  Occupancy occupancy(plot);
  occupancy.addLine({QPointF(50, 107), QPointF(450, 107)});
  const double line = *occupancy.covered({100, 100, 60, 14});
  QVERIFY(line > 0.1 && line < 0.5);
  QCOMPARE(*occupancy.covered({100, 130, 60, 14}), 0.0);
  occupancy.addLabel({100, 100, 60, 14});
  QVERIFY(*occupancy.covered({100, 100, 60, 14}) > 1);
}

void TestLabelPlacement::bestAvoidsWhatIsDrawn() {
  Occupancy occupancy(plot);
  occupancy.addLine({QPointF(50, 107), QPointF(450, 107)});
  occupancy.addMark({130, 160}, 8);
  const auto best =
      occupancy.best({{QRectF(100, 100, 60, 14)}, {QRectF(100, 153, 60, 14)}, {QRectF(100, 200, 60, 14)}});
  QCOMPARE(best->area.top(), 200.0);
}

void TestLabelPlacement::doubtCounts() {
  const auto best =
      Occupancy(plot).best({{QRectF(100, 100, 60, 14), {}, 0.2}, {QRectF(200, 100, 60, 14), {}, 0.1}});
  QCOMPARE(best->area.left(), 200.0);
}

void TestLabelPlacement::nothingOutsideThePlot() {
  QVERIFY(!Occupancy(plot).covered({10, 100, 60, 14}));
  QVERIFY(!Occupancy(plot).best({{QRectF(10, 100, 60, 14)}, {QRectF(430, 100, 60, 14)}}));
  QVERIFY(!Occupancy(QRectF()).best(placesBeside({QPointF(5, 5)}, {20, 10})));
}

// An L of two equal sides: half of the anchors on each, the end first.
void TestLabelPlacement::anchorsAreSpreadEvenly() {
  const auto anchors = anchorsAlong({QPointF(0, 0), QPointF(120, 0), QPointF(120, 120)});
  QCOMPARE(anchors.front(), QPointF(120, 120));
  QCOMPARE(anchors.back(), QPointF(0, 0));
  const auto onFirst = std::count_if(anchors.begin(), anchors.end(), [](QPointF p) { return p.y() == 0; });
  QCOMPARE(onFirst, static_cast<std::ptrdiff_t>(anchors.size() / 2 + 1));
  QCOMPARE(anchorsAlong({QPointF(3, 4)}).size(), 1U);
  QVERIFY(anchorsAlong({}).empty());
}

FETTLE_TEST(TestLabelPlacement)
#include "test_label_placement.moc"
