#include <QFile>
#include <QTest>
#include <set>

#include "core/measure/unit.h"
#include "core/steps/catalogue.h"
#include "tests/support/test_main.h"

using namespace fettle;

namespace {

class NoFiles : public InputFiles {
 public:
  tl::expected<CapturePointer, std::string> capture(const Json&, const Field&) override { return none(); }
  tl::expected<Json, std::string> table(const Json&, const Field&) override { return none(); }
  tl::expected<Json, std::string> grid(const Json&, const Field&) override { return none(); }

 private:
  static tl::unexpected<std::string> none() { return tl::unexpected(std::string("there is no file")); }
};

void checkFields(const std::vector<Field>& fields) {
  std::set<std::string> keys;
  for (const auto& field : fields) {
    QVERIFY2(keys.insert(field.key).second, field.key.c_str());
    QVERIFY2(!field.label.empty(), field.key.c_str());
    if (field.kind == FieldKind::choice) {
      QVERIFY2(!field.choices.empty(), field.key.c_str());
    }
    checkFields(field.columns);
  }
}

}  // namespace

/// What every step of the catalogue owes the program.
class TestContract : public QObject {
  Q_OBJECT

 private slots:
  void everyStepIsDescribed() {
    std::set<std::string> keys;
    for (const auto& step : catalogue()) {
      QVERIFY2(keys.insert(step.key).second, step.key.c_str());
      QVERIFY(!step.name.empty() && !step.purpose.empty() && !step.fields.empty() && !step.results.empty());
      checkFields(step.fields);
      for (const auto& pattern : step.headline) {
        QVERIFY2(step.describe(pattern), pattern.c_str());
      }
    }
  }

  void chartsOfThingsComeBackWhole() {
    Chart chart;
    chart.x = countedAxis("face");
    chart.x.nameThing(2, "left");
    QVERIFY(chartFromJson(toJson(chart)) == chart);
    QVERIFY(!toJson(chart)["axes"][1].contains("whole"));
  }

  void everyStepHasItsText() {
    for (const auto& step : catalogue()) {
      QFile text(
          QStringLiteral(FETTLE_SOURCE_DIR "/resources/steps/%1.md").arg(QString::fromStdString(step.key)));
      QVERIFY2(text.open(QIODevice::ReadOnly), step.key.c_str());
      const QByteArray words = text.readAll();
      for (const char* part :
           {"Purpose", "Tools", "What to do", "Cautions", "Common mistakes", "Sources"}) {
        QVERIFY2(words.contains(part), (step.key + ": " + part).c_str());
      }
    }
  }

  void anEmptyStepIsIncompleteAndSaysWhatToEnter() {
    NoFiles files;
    for (const auto& step : catalogue()) {
      const auto result = step.evaluate(Json::object(), {}, files);
      QVERIFY2(result.has_value(), step.key.c_str());
      QVERIFY2(!result->complete && !result->missing.empty(), step.key.c_str());
      QVERIFY2(result->values.empty() && result->settings.empty(), step.key.c_str());
      QVERIFY2(!result->charts.empty(), step.key.c_str());
      for (const auto& chart : result->charts) {
        QVERIFY2(!chart.whenEmpty.empty(), chart.id.c_str());
      }
      const Json json = toJson(*result);
      QVERIFY(toJson(resultFromJson(json)) == json);
    }
  }

  void anUnknownFieldIsSaid() {
    NoFiles files;
    for (const auto& step : catalogue()) {
      const auto result = step.evaluate({{"no_such_field", 1}}, {}, files);
      QVERIFY(result);
      const bool said = std::any_of(result->findings.begin(), result->findings.end(),
                                    [](const Finding& finding) { return finding.code == "unknown-field"; });
      QVERIFY2(said, step.key.c_str());
    }
  }
};

FETTLE_TEST(TestContract)
#include "test_contract.moc"
