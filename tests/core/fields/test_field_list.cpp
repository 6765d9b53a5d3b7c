#include "core/fields/field_list.h"

#include <QTest>
#include <cmath>

#include "tests/support/test_main.h"

using namespace fettle;

namespace {

struct Pluck : TableRow {
  std::string belt;
  std::optional<double> frequency, from;
  void describe(FieldList& columns) {
    columns.text("belt", belt, "Belt").required();
    columns.number("frequency_hz", frequency, "Frequency", "Hz").bounds(10, 1000).required();
    columns.number("from_hz", from, "From", "Hz").requiredWhen("belt", {"swept"});
  }
};

struct PluckInputs {
  std::vector<Pluck> plucks, recordings;
  std::optional<double> length;
  double margin = 0.1;
  std::string mode = "quick";
  void describe(FieldList& fields) {
    fields.table("plucks", plucks, "Plucks");
    fields.table("recordings", recordings, "Recordings");
    fields.number("length_mm", length, "Length", "mm").bounds(50, 500).requiredWhen("mode", {"full"});
    fields.number("margin", margin, "Margin", "1").bounds(0, 1);
    fields.choice("mode", mode, "Mode", {{"quick", "Quick"}, {"full", "Full"}});
    fields.oneOf({"plucks", "recordings"});
  }
};

struct Read {
  PluckInputs inputs;
  FieldReader reader;
  explicit Read(const Json& json) {
    FieldList list;
    inputs.describe(list);
    list.read(json, reader);
  }
};

using Paths = std::vector<std::string>;

}  // namespace

/// What a field list makes of values. Expected: the rules of core/fields/field_list.h, by inspection.
class TestFieldList : public QObject {
  Q_OBJECT

 private slots:
  void oneOfSeveralIsEnough() {
    QCOMPARE(Read(Json::object()).reader.missing(), Paths{"plucks"});
    const Json row{{"belt", "x"}, {"frequency_hz", 90}};
    QCOMPARE(Read(Json{{"recordings", {row}}}).reader.missing(), Paths{});
  }

  void whatWasBegunIsAskedFor() {
    const Json half{{"belt", "x"}};
    QCOMPARE(Read(Json{{"recordings", {half}}}).reader.missing(),
             (Paths{"recordings[1].frequency_hz", "recordings"}));
  }

  void aTableWhoseRowsAreAllLeftOutIsMissing() {
    const Json excluded{{"belt", "x"}, {"frequency_hz", 90}, {"excluded", "slipped"}};
    QCOMPARE(Read(Json{{"plucks", {excluded}}}).reader.missing(), Paths{"plucks"});
    const Json blank{{"belt", "x"}};
    QCOMPARE(Read(Json{{"plucks", {blank}}}).reader.missing(), (Paths{"plucks[1].frequency_hz", "plucks"}));
  }

  void aRowWithABlankOrRefusedCellIsLeftOut() {
    const Json good{{"belt", "x"}, {"frequency_hz", 90}};
    const Read read(Json{{"plucks", {good, {{"belt", "y"}}, {{"belt", "y"}, {"frequency_hz", "eighty"}}}}});
    QCOMPARE(read.inputs.plucks.size(), std::size_t{1});
    QCOMPARE(read.reader.missing(), Paths{"plucks[2].frequency_hz"});
    QCOMPARE(read.reader.refusals().size(), std::size_t{1});
    QCOMPARE(read.reader.refusals()[0].path, std::string("plucks[3].frequency_hz"));
  }

  void everyRefusalIsKept() {
    const Json bad{{"belt", "x"}, {"frequency_hz", 5000}};
    const Read read(Json{{"plucks", {bad, bad}}, {"length_mm", "long"}});
    QCOMPARE(read.reader.refusals().size(), std::size_t{3});
    QVERIFY(read.reader.problem()->find("5000") != std::string::npos);
    QVERIFY(read.inputs.length && std::isnan(*read.inputs.length));
  }

  void anExcludedRowIsNotHeldToAnything() {
    const Read read(Json{{"plucks", {{{"belt", "x"}, {"frequency_hz", "?"}, {"excluded", "slipped"}}}}});
    QVERIFY(read.reader.refusals().empty());
    QCOMPARE(read.inputs.plucks.size(), std::size_t{1});
    QVERIFY(included(read.inputs.plucks).empty());
  }

  void requiredWhenAsksOnlyThen() {
    const Json row{{"belt", "swept"}, {"frequency_hz", 90}};
    QCOMPARE(Read(Json{{"plucks", {row}}}).reader.missing(), (Paths{"plucks[1].from_hz", "plucks"}));
    const Json plain{{"belt", "x"}, {"frequency_hz", 90}};
    QCOMPARE(Read(Json{{"plucks", {plain}}}).reader.missing(), Paths{});
    QCOMPARE(Read(Json{{"plucks", {plain}}, {"mode", "full"}}).reader.missing(), Paths{"length_mm"});
  }

  void aRefusedNumberIsNeverGuessed() {
    QCOMPARE(Read(Json::object()).inputs.margin, 0.1);
    QVERIFY(std::isnan(Read(Json{{"margin", "little"}}).inputs.margin));
    QVERIFY(std::isnan(Read(Json{{"margin", 2}}).inputs.margin));
  }

  void unknownKeysAreNamed() {
    const Json row{{"belt", "x"}, {"frequency_hz", 90}, {"colour", "red"}};
    QCOMPARE(Read(Json{{"plucks", {row}}, {"size", 3}}).reader.unknown(),
             (Paths{"plucks[1].colour", "size"}));
  }
};

FETTLE_TEST(TestFieldList)
#include "test_field_list.moc"
