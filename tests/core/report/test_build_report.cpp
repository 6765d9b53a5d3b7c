#include "core/report/build_report.h"

#include <QFile>
#include <QTest>

#include "core/history/version.h"
#include "core/steps/catalogue.h"
#include "tests/core/report/small_history.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// Expected: the wording of this program, kept as text in golden/. After a change that is meant, write it
/// anew and read the difference:
///   FETTLE_RENEW=1 tests/test_core_report test_build_report && git diff tests/core/report/golden
/// What is not in the golden text is said beside each check.
class TestBuildReport : public QObject {
  Q_OBJECT

  static void compareWithGolden(const QString& name, const QString& text) {
    QFile golden(QStringLiteral(FETTLE_SOURCE_DIR "/tests/core/report/golden/") + name);
    if (qEnvironmentVariableIsSet("FETTLE_RENEW")) {
      QVERIFY(golden.open(QIODevice::WriteOnly));
      golden.write(text.toUtf8());
      return;
    }
    QVERIFY2(golden.open(QIODevice::ReadOnly), qPrintable(golden.fileName()));
    const QStringList expected = QString::fromUtf8(golden.readAll()).split('\n');
    const QStringList found = text.split('\n');
    for (qsizetype i = 0; i < std::min(expected.size(), found.size()); ++i) {
      QCOMPARE(found[i], expected[i]);
    }
    QCOMPARE(found.size(), expected.size());
  }

  static QString reportText(const History& history, RecordId session) {
    return asText(buildReport(history, session).blocks);
  }

 private slots:
  void firstSessionAsKept() { compareWithGolden("first_session.txt", reportText(smallHistory(), 1)); }
  void secondSessionAsKept() { compareWithGolden("second_session.txt", reportText(smallHistory(), 2)); }

  void headAndFoot() {
    const Report report = buildReport(smallHistory(), 2);
    QCOMPARE(report.machine, std::string("Test rig"));
    QCOMPARE(report.date, std::string("2026-04-02"));
    QCOMPARE(report.program, "Fettle " + programVersion());
  }

  // Mean of the three marks kept, by hand: x (30.0 + 30.1 + 30.1)/3 = 30.067, y -(8.2 + 8.1 + 8.2)/3 =
  // -8.167; the mark left out would make them 32.05 and -8.125.
  void countsOnlyTheRowsKept() {
    const QString text = reportText(smallHistory(), 1);
    QVERIFY2(text.contains(QString("Probe offset x | 30.07 ±")), qPrintable(text));
    QVERIFY2(text.contains(QString("Probe offset y | −8.17 ±")), qPrintable(text));
    QVERIFY(text.contains("struck 4 | 150 | 160 | 112 | 168 | slipped, saw it move"));
  }

  void saysWhatWasAdoptedAndWhatNot() {
    const QString text = reportText(smallHistory(), 1);
    QVERIFY(
        text.contains(QRegularExpression("- Probe offset x \\| 30 mm \\| 30\\.07 ± .* mm \\| 30\\.07 ± ")));
    QVERIFY(text.contains(
        QRegularExpression("- Probe offset y \\| −8 mm \\| −8\\.17 ± .* mm \\| not adopted")));
    QVERIFY(text.contains("- Probe position | – Not adopted: Probe offset y"));
  }

  void refusedReadingsAreShownWithTheSentence() {
    const History history = smallHistory();
    const QString text = reportText(history, 2);
    const auto& findings = history.evaluated.at(11).result.findings;
    const auto refused = std::find_if(findings.begin(), findings.end(),
                                      [](const Finding& finding) { return finding.code == "refused"; });
    QVERIFY(refused != findings.end());
    QCOMPARE(refused->at, std::string("marks[1].nozzle_x"));
    QVERIFY(text.contains("fault refused: " + QString::fromStdString(refused->text)));
    QVERIFY(text.contains("- 1 | a lot"));
    QVERIFY(text.contains("bench was supervised"));
  }

  void olderValuesAndChangedReadingsAreSaid() {
    History history = smallHistory();
    QVERIFY(!reportText(history, 1).contains("older values"));
    history.machine.sheet["bed_max_x"] = 210;
    QVERIFY(reportText(history, 1).contains("caution: Evaluated with older values"));
    history.runs[0].inputs["margin"] = 7;
    QVERIFY(reportText(history, 1).contains("caution: Readings were changed after this evaluation."));
  }

  void aStepNotTouchedStandsAsAcceptedBefore() {
    History history = smallHistory();
    history.runs.pop_back();
    const QString text = reportText(history, 2);
    QVERIFY(text.contains("### Run, session of 2026-03-01: accepted 2026-03-01 09:40"));
    QVERIFY(text.contains(QString("Probe offset x | 30.07 ±")));
  }

  void aStepOfAnotherProgramIsNamed() {
    History history = smallHistory();
    history.runs[1].step = "no-such-step";
    QVERIFY(reportText(history, 2).contains("This program has no step no-such-step"));
  }

  void withoutAnything() {
    const QString text = reportText({}, 0);
    QVERIFY(text.startsWith("# Commissioning report\n"));
    QVERIFY(text.contains("None noted."));
  }

  // Whatever somebody typed or a file brought is shown or left out; it never ends the report.
  void strangeInputsNeverThrow() {
    const Json strange[] = {nullptr,
                            7,
                            "text",
                            Json::array({1, "two", nullptr}),
                            Json::array({{{"excluded", 3}}}),
                            {{"file", 5}},
                            {{"file", "a.csv"}, {"constants", 4}},
                            {{"x", {1, 2}}, {"y", {1}}, {"z", {{1}}}},
                            {{"x", {1, 2}}, {"y", {1}}, {"z", {3}}},
                            {{"x", {"a"}}, {"y", nullptr}, {"z", 4}}};
    for (const auto& step : catalogue()) {
      for (const auto& value : strange) {
        History history = smallHistory();
        history.machine.sheet["name"] = value;
        history.runs[1].step = step.key;
        history.runs[1].inputs = Json::object({{"instruments", value}, {"as_found", value}});
        for (const auto& field : step.fields) {
          history.runs[1].inputs[field.key] = value;
        }
        QVERIFY(!buildReport(history, 2).blocks.empty());
      }
    }
  }
};

FETTLE_TEST(TestBuildReport)
#include "test_build_report.moc"
