#include <QSignalSpy>
#include <QTest>
#include <algorithm>

#include "core/history/evaluation.h"
#include "tests/support/imported_machine.h"
#include "tests/support/test_main.h"
#include "ui/editing/document.h"
#include "ui/editing/evaluator.h"

using namespace fettle;
using namespace fettle::ui;

/// When runs are evaluated, with the captures of the demo machine. That each result is the one made afresh
/// is shown by tests/core/steps/test_resonance_memory.
class TestEvaluator : public QObject {
  Q_OBJECT

  fettle::tests::ImportedMachine m_machine;
  std::unique_ptr<Document> m_document;
  std::unique_ptr<Evaluator> m_evaluator;
  RecordId m_run = 0;

  bool isCurrentNow() const {
    const History& history = m_document->history();
    const auto found = history.evaluated.find(m_run);
    return found != history.evaluated.end() && isCurrent(found->second, *history.run(m_run));
  }
  void enter(double deviation) {
    QVERIFY(m_document->setInput("resonance", m_run, "path_deviation_mm", deviation, "deviation"));
  }
  /// Enters again and again until a result is there at once. @return whether that came
  bool becomesQuick() {
    for (int i = 1; i <= 40; ++i) {
      enter(0.1 * i);
      if (isCurrentNow()) {
        return true;
      }
      if (!QTest::qWaitFor([&] { return isCurrentNow(); }, 30000)) {
        return false;
      }
    }
    return false;
  }
  double deviationNow() const {
    return m_document->history().run(m_run)->inputs["path_deviation_mm"].get<double>();
  }
  /// Of the settings that are proposed.
  double acceleration() const {
    const auto& settings = m_document->history().evaluated.at(m_run).result.settings;
    const auto found = std::find_if(settings.begin(), settings.end(),
                                    [](const auto& setting) { return setting.id == "x.acceleration"; });
    return found == settings.end() ? 0 : *found->proposed.number;
  }

 private slots:
  void init() {
    auto file = MachineFile::open(m_machine.file().toStdString());
    QVERIFY(file.has_value());
    m_document = std::make_unique<Document>(std::move(*file));
    m_evaluator = std::make_unique<Evaluator>(*m_document);
    const auto& runs = m_document->history().runs;
    const auto measured =
        std::find_if(runs.begin(), runs.end(), [](const StepRun& run) { return run.step == "resonance"; });
    QVERIFY(measured != runs.end());
    const Json inputs = measured->inputs;
    QVERIFY(m_document->addRun("resonance", ""));
    m_run = m_document->history().runs.back().id;
    QVERIFY(m_document->setInput("resonance", m_run, "captures", inputs["captures"], "captures"));
    QTRY_VERIFY_WITH_TIMEOUT(isCurrentNow(), 30000);
  }
  void cleanup() {
    m_evaluator.reset();
    m_document.reset();
  }

  // The screen asks for what is not current as soon as it hears of a change.
  void whatIsUnderWayIsNotBegunAgain() {
    QSignalSpy held(m_document.get(), &Document::resultHeld);
    enter(0.2);
    m_evaluator->bringUpToDate(m_run);
    QTRY_VERIFY(isCurrentNow());
    QTest::qWait(50);
    QCOMPARE(held.count(), 1);
  }

  // An entry that costs little beside captures that are known needs no worker. What counts as quick is a
  // time: on a slow or busy machine, and in builds without optimisation, it may never be.
  void aQuickRunIsEvaluatedAtOnce() {
    const bool wasAtOnce = becomesQuick();
    const double before = acceleration();
    QVERIFY(before > 0);
    enter(deviationNow() / 2);
    QTRY_VERIFY(isCurrentNow());
    QCOMPARE(acceleration(), before / 2);  // a = 2e/σ²
    if (!wasAtOnce) {
      QSKIP("Nothing was evaluated within the time that counts as quick here.");
    }
  }

  void whatTurnsOutSlowGoesToTheWorker() {
    const bool wasAtOnce = becomesQuick();
    QVERIFY(m_document->setInput("resonance", m_run, "segment_s", 0.32, "segment"));
    if (isCurrentNow()) {
      QSKIP("This machine examined the captures anew within the time that counts as quick.");
    }
    QVERIFY(m_evaluator->isBusy(m_run));
    QTRY_VERIFY_WITH_TIMEOUT(isCurrentNow(), 30000);
    const Evaluated& evaluated = m_document->history().evaluated.at(m_run);
    QVERIFY2(evaluated.complete(), evaluated.problem.c_str());
    if (!wasAtOnce) {
      QSKIP("Nothing was evaluated within the time that counts as quick here.");
    }
  }

  void whatComesTooLateIsDropped() {
    QSignalSpy held(m_document.get(), &Document::resultHeld);
    QVERIFY(m_document->setInput("resonance", m_run, "segment_s", 0.64, "segment"));  // begins anew
    QVERIFY(m_evaluator->isBusy(m_run));
    enter(0.3);
    QTRY_VERIFY_WITH_TIMEOUT(isCurrentNow() && !m_evaluator->isBusy(m_run), 30000);
    QCOMPARE(held.count(), 1);
  }
};

FETTLE_TEST(TestEvaluator)
#include "test_evaluator.moc"
