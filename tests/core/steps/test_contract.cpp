#include <QFile>
#include <QTest>
#include <algorithm>
#include <set>

#include "core/measure/unit.h"
#include "core/steps/catalogue.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

void checkFields(const std::vector<Field>& fields) {
  std::set<std::string> keys;
  for (const auto& field : fields) {
    QVERIFY2(keys.insert(field.key).second, field.key.c_str());
    QVERIFY2(!field.label.empty(), field.key.c_str());
    QVERIFY2(field.unit.empty() || unitFromText(field.unit), (field.key + ": " + field.unit).c_str());
    if (field.kind == FieldKind::choice) {
      QVERIFY2(!field.choices.empty(), field.key.c_str());
    }
    checkFields(field.columns);
  }
}

/// The parts of the step's text that are missing or hold nothing.
QString missingParts(const std::string& key) {
  QFile file(QStringLiteral(FETTLE_SOURCE_DIR "/resources/steps/") + QString::fromStdString(key) + ".md");
  if (!file.open(QIODevice::ReadOnly)) {
    return "there is no " + file.fileName();
  }
  const QStringList parts = QString::fromUtf8(file.readAll()).split("\n## ");
  QString missing;
  for (const char* name : {"Purpose", "Tools", "What to do", "Cautions", "Common mistakes", "Sources"}) {
    const QString head = QString(name) + "\n";
    const bool told = std::any_of(parts.begin(), parts.end(), [&](const QString& part) {
      return part.startsWith(head) && part.trimmed().size() > head.size();
    });
    missing += told ? QString() : QString(name) + "; ";
  }
  return missing;
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
      for (const auto& given : step.results) {
        QVERIFY2(given.unit.empty() || unitFromText(given.unit), (given.id + ": " + given.unit).c_str());
      }
      QVERIFY2(step.headline.size() <= 3, step.key.c_str());
      for (const auto& pattern : step.headline) {
        QVERIFY2(step.describe(pattern), pattern.c_str());
      }
      for (const auto& plan : step.plans) {
        QVERIFY2(findField(step.fields, plan.table), plan.key.c_str());
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
      QCOMPARE(missingParts(step.key), QString());
    }
  }

  void anEmptyStepIsIncompleteAndSaysWhatToEnter() {
    NoFiles files;
    for (const auto& step : catalogue()) {
      const auto result = step.evaluate(Json::object(), {}, files);
      QVERIFY2(result.has_value(), step.key.c_str());
      QVERIFY2(!result->complete && !result->missing.empty(), step.key.c_str());
      QVERIFY2(result->settings.empty() && !result->next.empty(), step.key.c_str());
      for (const auto& value : result->values) {
        QVERIFY2(!value.quantity && !value.why.empty(), value.id.c_str());
      }
      QVERIFY2(!result->charts.empty(), step.key.c_str());
      for (const auto& chart : result->charts) {
        QVERIFY2(!chart.whenEmpty.empty(), chart.view.c_str());
      }
      const Json json = toJson(*result);
      QVERIFY(toJson(resultFromJson(json)) == json);
    }
  }

  void anUnknownFieldIsRefusedByName() {
    NoFiles files;
    for (const auto& step : catalogue()) {
      const auto result = step.evaluate({{"no_such_field", 1}}, {}, files);
      QVERIFY(!result);
      QVERIFY2(result.error().find("no_such_field") != std::string::npos, step.key.c_str());
    }
  }
};

FETTLE_TEST(TestContract)
#include "test_contract.moc"
