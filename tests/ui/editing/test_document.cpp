#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <functional>

#include "core/history/evaluation.h"
#include "tests/support/test_main.h"
#include "ui/editing/document.h"
#include "ui/editing/evaluator.h"
#include "ui/editing/run_verbs.h"

using namespace fettle;
using namespace fettle::ui;

/// The verbs of the open machine: each one undo step, each on the disk before it returns. Expected: the
/// contract in document.h.
class TestDocument : public QObject {
  Q_OBJECT

  QTemporaryDir m_folder;
  std::unique_ptr<Document> m_document;
  int m_files = 0;

  QString path() const { return m_folder.filePath(QString::number(m_files) + ".fettle"); }
  const History& history() const { return m_document->history(); }
  RecordId lastRun() const { return history().runs.back().id; }
  /// What another reader finds on the disk now.
  History onDisk() const {
    auto file = MachineFile::open(path().toStdString(), true);
    return file ? (*file)->history() : History{};
  }
  static bool same(const History& a, const History& b) {
    return a.machine == b.machine && a.changes == b.changes && a.sessions == b.sessions &&
           a.runs == b.runs && a.marks == b.marks;
  }

 private slots:
  void init() {
    ++m_files;
    auto file = MachineFile::create(path().toStdString());
    QVERIFY(file.has_value());
    m_document = std::make_unique<Document>(std::move(*file));
    Session session;
    session.date = "2026-03-02T09:00:00";
    session.person = "A B";
    QVERIFY(m_document->startSession(session));
  }
  void cleanup() { m_document.reset(); }

  void theFirstEntryBeginsARun() {
    QVERIFY(m_document->setInput("melt-rate", 0, "volume_mm3", 500, "volume"));
    QCOMPARE(history().runs.size(), std::size_t{1});
    QCOMPARE(history().runs[0].inputs["volume_mm3"].get<int>(), 500);
    QCOMPARE(history().runs[0].session, m_document->session());
    QVERIFY(onDisk().runs == history().runs);
  }

  void undoAndRedoGoThroughTheDisk() {
    m_document->setInput("melt-rate", 0, "volume_mm3", 500, "volume");
    const RecordId run = lastRun();
    m_document->setInput("melt-rate", run, "volume_mm3", 600, "volume");
    m_document->setNotes("melt-rate", run, "as seen");
    m_document->undoStack().undo();
    m_document->undoStack().undo();
    QCOMPARE(history().run(run)->inputs["volume_mm3"].get<int>(), 500);
    QCOMPARE(history().run(run)->notes, std::string());
    QVERIFY(onDisk().runs == history().runs);
    m_document->undoStack().redo();
    m_document->undoStack().redo();
    QCOMPARE(history().run(run)->inputs["volume_mm3"].get<int>(), 600);
    QCOMPARE(history().run(run)->notes, std::string("as seen"));
    QVERIFY(onDisk().runs == history().runs);
  }

  /// Each verb after the other on one history: one undo step, whose undoing gives the whole history before
  /// and whose doing again the one after, in memory and on the disk.
  void everyVerbIsUndoneAndDoneAgain() {
    Document& document = *m_document;
    const auto proposal = [] {
      SettingProposal made;
      made.id = "flow_limit";
      made.unit = "mm3/s";
      made.proposed.number = 12.5;
      return made;
    }();
    const std::pair<const char*, std::function<bool()>> verbs[] = {
        {"setInput", [&] { return document.setInput("melt-rate", 0, "volume_mm3", 500, "volume"); }},
        {"setNotes", [&] { return document.setNotes("melt-rate", lastRun(), "as seen"); }},
        {"accept", [&] { return accept(document, lastRun()); }},
        {"withdraw", [&] { return withdraw(document, lastRun()); }},
        {"adopt", [&] { return adopt(document, lastRun(), proposal); }},
        {"setEntered", [&] { return setEntered(document, lastRun(), "flow_limit", true); }},
        {"adoptOwn",
         [&] {
           return adoptOwn(document, lastRun(), proposal, {12.0, ""}, "round");
         }},
        {"correctSlip", [&] { return correctSlip(document, lastRun(), "volume_mm3", 50, "a 0 too many"); }},
        {"withdrawAdoption", [&] { return withdrawAdoption(document, lastRun(), "flow_limit"); }},
        {"addRun", [&] { return document.addRun("belt-tension", ""); }},
        {"mark", [&] { return document.mark("power-up", StepMark::Kind::overridden, "bench supply"); }},
        {"withdrawMark", [&] { return document.withdrawMark("power-up", StepMark::Kind::overridden); }},
        {"addPartChange", [&] { return document.addPartChange("nozzle", "hardened"); }},
        {"setMachine",
         [&] {
           MachineRecord machine = history().machine;
           machine.sheet["name"] = "Rig";
           return document.setMachine(machine, "name");
         }},
        {"editSession",
         [&] {
           Session session = history().sessions.back();
           session.reason = "yearly check";
           return document.editSession(session, "reason");
         }},
        {"startSession", [&] {
           return document.startSession({0, "2026-04-02T09:00:00", "", "", "", {}, 0});
         }}};
    for (const auto& [name, verb] : verbs) {
      const History before = history();
      const int steps = document.undoStack().index();
      QVERIFY2(verb(), name);
      const History after = history();
      QVERIFY2(document.undoStack().index() == steps + 1 && !same(before, after), name);
      QVERIFY2(document.undo(), name);
      QVERIFY2(same(history(), before) && same(onDisk(), before), name);
      QVERIFY2(document.redo(), name);
      QVERIFY2(same(history(), after) && same(onDisk(), after), name);
    }
  }

  void theSameValueIsNoEdit() {
    m_document->setInput("melt-rate", 0, "volume_mm3", 500, "volume");
    const int edits = m_document->undoStack().count();
    QSignalSpy changed(m_document.get(), &Document::changed);
    QVERIFY(m_document->setInput("melt-rate", lastRun(), "volume_mm3", 500, "volume"));
    QCOMPARE(m_document->undoStack().count(), edits);
    QCOMPARE(changed.count(), 0);
  }

  /// Accepted, adopted from, or left with verdict fail: the run stays, the edit begins another with its
  /// entries.
  void anEditOfEvidenceBeginsANewRun_data() {
    QTest::addColumn<QString>("how");
    for (const char* how : {"accepted", "adopted from", "left with verdict fail"}) {
      QTest::newRow(how) << how;
    }
  }
  void anEditOfEvidenceBeginsANewRun() {
    QFETCH(QString, how);
    m_document->setInput("melt-rate", 0, "volume_mm3", 500, "volume");
    m_document->setInput("melt-rate", lastRun(), "density_g_cm3", 1.24, "density");
    const RecordId evidence = lastRun();
    if (how == "accepted") {
      QVERIFY(accept(*m_document, evidence));
    } else if (how == "adopted from") {
      SettingProposal proposal;
      proposal.id = "flow_limit";
      proposal.proposed.number = 12.5;
      QVERIFY(adopt(*m_document, evidence, proposal));
    } else {
      Evaluated failed;
      failed.result.judgements.push_back({"plateau", Verdict::fail, {}, 0});
      failed.inputsHash = hashOf(history().run(evidence)->inputs);
      m_document->holdResult(evidence, failed);
      QVERIFY(m_document->setInput("melt-rate", evidence, "volume_mm3", 510, "volume"));
      QCOMPARE(lastRun(), evidence);  // it is still being entered
      m_document->leaveRun();
    }
    const StepRun before = *history().run(evidence);
    QSignalSpy begun(m_document.get(), &Document::runBegun);
    QVERIFY(
        m_document->setInput("melt-rate", evidence, "volume_mm3", before.inputs["volume_mm3"], "volume"));
    QCOMPARE(lastRun(), evidence);  // nothing was changed
    QVERIFY(m_document->setInput("melt-rate", evidence, "volume_mm3", 501, "volume"));
    QCOMPARE(begun.count(), 1);
    QVERIFY(*history().run(evidence) == before);
    const StepRun& made = history().runs.back();
    QVERIFY(made.id != evidence && !made.accepted() && made.adopted.empty());
    QCOMPARE(made.inputs["volume_mm3"].get<int>(), 501);
    QCOMPARE(made.inputs["density_g_cm3"].get<double>(), 1.24);
    QCOMPARE(made.role, how == "adopted from" ? RunRole::corrected : RunRole::repeat);
    QVERIFY(onDisk().runs == history().runs);
  }

  void aSlipIsPutRightWithAReason() {
    m_document->setInput("melt-rate", 0, "volume_mm3", 5000, "volume");
    QVERIFY(accept(*m_document, lastRun(), "as the maker says"));
    QVERIFY(correctSlip(*m_document, lastRun(), "volume_mm3", 500, "a 0 too many"));
    const StepRun& run = history().runs.front();
    QCOMPARE(history().runs.size(), std::size_t{1});
    QVERIFY(run.accepted());
    QCOMPARE(run.acceptReason, std::string("as the maker says"));
    QCOMPARE(run.inputs["volume_mm3"].get<int>(), 500);
    QCOMPARE(run.corrections.size(), std::size_t{1});
    QCOMPARE(run.corrections[0].before, std::string("5000"));
    QCOMPARE(run.corrections[0].after, std::string("500"));
    QCOMPARE(run.corrections[0].reason, std::string("a 0 too many"));
    QVERIFY(onDisk().runs == history().runs);
  }

  void theFirstEntrySaysWhenItWasMeasured() {
    QVERIFY(m_document->addRun("melt-rate", ""));
    QVERIFY(history().runs[0].measuredOn.empty());
    m_document->setInput("melt-rate", lastRun(), "volume_mm3", 500, "volume");
    QVERIFY(!history().runs[0].measuredOn.empty());
    QCOMPARE(history().runs[0].role, RunRole::arrival);
  }

  void acceptingSignsTheResult() {
    Evaluator evaluator(*m_document);
    m_document->setInput("melt-rate", 0, "volume_mm3", 500, "volume");
    QVERIFY(accept(*m_document, lastRun()));
    const Json signedResult = history().runs[0].signedResult;
    QCOMPARE(signedResult["step"].get<std::string>(), std::string("melt-rate"));
    QVERIFY(!signedResult.contains("charts"));
    QVERIFY(withdraw(*m_document, lastRun()));
    QVERIFY(history().runs[0].signedResult.empty());
  }

  void adoptedValuesAreKeptAndTakenBack() {
    m_document->setInput("melt-rate", 0, "volume_mm3", 500, "volume");
    SettingProposal proposal;
    proposal.id = "flow_limit";
    proposal.unit = "mm3/s";
    proposal.proposed.number = 12.5;
    proposal.U = 0.4;
    QVERIFY(adopt(*m_document, lastRun(), proposal));
    QCOMPARE(history().runs[0].adopted.size(), std::size_t{1});
    QCOMPARE(*history().runs[0].adopted[0].value.number, 12.5);
    QVERIFY(!history().runs[0].adopted[0].isOwnValue());
    QVERIFY(setEntered(*m_document, lastRun(), "flow_limit", true));
    QVERIFY(!history().runs[0].adopted[0].enteredOn.empty());
    QVERIFY(adoptOwn(*m_document, lastRun(), proposal, {12.0, ""}, "a round number"));
    QCOMPARE(history().runs[0].adopted.size(), std::size_t{1});
    QVERIFY(history().runs[0].adopted[0].isOwnValue());
    QCOMPARE(*history().runs[0].adopted[0].proposed.number, 12.5);
    QCOMPARE(history().runs[0].adopted[0].reason, std::string("a round number"));
    QVERIFY(history().runs[0].adopted[0].enteredOn.empty());  // another value: not entered yet
    QVERIFY(withdrawAdoption(*m_document, lastRun(), "flow_limit"));
    QVERIFY(history().runs[0].adopted.empty());
  }

  void anEarlierSessionIsReadOnly() {
    m_document->setInput("melt-rate", 0, "volume_mm3", 500, "volume");
    const RecordId first = m_document->session();
    Session second;
    second.date = "2026-04-02T09:00:00";
    m_document->startSession(second);
    QVERIFY(m_document->editable());
    m_document->showSession(first);
    QVERIFY(!m_document->editable());
    QVERIFY(!m_document->whyNotEditable().isEmpty());
    QSignalSpy failed(m_document.get(), &Document::failed);
    QVERIFY(!m_document->setNotes("melt-rate", lastRun(), "too late"));
    QCOMPARE(failed.count(), 1);
  }

  void reasonsAreKept() {
    QVERIFY(m_document->mark("power-up", StepMark::Kind::overridden, "bench supply, no mains"));
    QCOMPARE(history().marks.size(), std::size_t{1});
    QCOMPARE(onDisk().marks[0].reason, std::string("bench supply, no mains"));
  }

  // 500 mm³ at 1.24 g/cm³ weigh 0.62 g: all of it delivered. The result follows the entry by itself and is
  // on the disk a moment later.
  void aResultFollowsItsEntry() {
    Evaluator evaluator(*m_document);
    QSignalSpy held(m_document.get(), &Document::resultHeld);
    m_document->setInput("melt-rate", 0, "volume_mm3", 500, "volume");
    m_document->setInput("melt-rate", lastRun(), "density_g_cm3", 1.24, "density");
    Json steps = Json::array();
    for (int flow = 4; flow < 16; ++flow) {
      steps.push_back({{"flow_mm3_s", flow}, {"mass_g", flow < 10 ? 0.62 : 0.62 - 0.02 * (flow - 9)}});
    }
    m_document->setInput("melt-rate", lastRun(), "steps", steps, "steps");
    QCOMPARE(held.count(), 3);
    const auto& result = history().evaluated.at(lastRun()).result;
    QVERIFY(result.complete);
    QVERIFY(std::abs(result.quantity("plateau")->value - 1) < 1e-9);
    QTRY_VERIFY(onDisk().evaluated.contains(lastRun()));
  }

  void aFileThatCouldNotBeReadIsReadAgain() {
    const std::string bytes = "flow_mm3_s,delivered\n4,1\n5,1\n6,1\n";
    Evaluator evaluator(*m_document);
    m_document->setInput("melt-rate", 0, "steps", {{"file", "steps.csv"}, {"sha256", sha256(bytes)}},
                         "steps");
    const auto problem = [&] {
      const auto found = history().evaluated.find(lastRun());
      return found == history().evaluated.end() ? std::string("not evaluated") : found->second.problem;
    };
    QTRY_VERIFY2(problem().find("is not in") != std::string::npos, problem().c_str());
    QVERIFY(m_document->file().addBlob(bytes, "steps.csv"));
    evaluator.evaluateAgain(lastRun());
    QTRY_COMPARE(problem(), std::string());
  }
};

FETTLE_TEST(TestDocument)
#include "test_document.moc"
