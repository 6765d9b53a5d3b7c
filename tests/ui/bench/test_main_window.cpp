#include <QSettings>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <QtWidgets>

#include "core/history/evaluation.h"
#include "tests/support/test_main.h"
#include "ui/bench/main_window.h"
#include "ui/bench/start_page.h"
#include "ui/bench/step_page.h"
#include "ui/editing/run_verbs.h"
#include "ui/theme/look.h"

using namespace fettle;
using namespace fettle::ui;

/// What the window itself does: the bench before a machine is open, its messages, undo out of sight.
class TestMainWindow : public QObject {
  Q_OBJECT

  QTemporaryDir m_folder;
  std::unique_ptr<MainWindow> m_window;

  QString path() const { return m_folder.filePath("rig.fettle"); }
  Document& document() { return *m_window->document(); }
  QString message() { return m_window->findChild<QLabel*>("messageLabel")->text(); }
  QString standing() { return m_window->findChild<QLabel*>("standingLabel")->text(); }
  void press(Qt::Key key, Qt::KeyboardModifiers with = {}) {
    QTest::keyClick(m_window.get(), key, with);
    QCoreApplication::processEvents();
  }
  void showWindow() {
    m_window = std::make_unique<MainWindow>(applyLook(*qApp, Look::light));
    m_window->show();
    QApplication::setActiveWindow(m_window.get());
    QVERIFY(QTest::qWaitForWindowActive(m_window.get()));
  }

 private slots:
  void initTestCase() {
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, m_folder.path());
  }
  void init() {
    QFile::remove(path());
    History history;
    history.machine.sheet["name"] = "Rig";
    history.sessions.push_back({2, "2026-03-02T09:00:00", "A B", "", "", std::nullopt, 0});
    QVERIFY(MachineFile::create(path().toStdString(), history));
    showWindow();
  }
  void cleanup() { m_window.reset(); }

  void withoutAMachineItSaysHowToBegin() {
    auto* page = m_window->findChild<StartPage*>();
    QVERIFY(page->isVisible());
    QVERIFY(!m_window->page().isVisible());
    QSignalSpy wanted(page, &StartPage::newWanted);
    page->disconnect(m_window.get());  // the dialog would wait for an answer
    QCOMPARE(QApplication::focusWidget()->objectName(), QString("newMachineButton"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    QCOMPARE(wanted.size(), 1);
    QVERIFY(m_window->openFile(path()));
    QVERIFY(!page->isVisible());
    QVERIFY(m_window->page().isVisible());
  }

  void undoOutOfSightGoesThereAndSaysSo() {
    QVERIFY(m_window->openFile(path()));
    m_window->chooseStep("melt-rate");
    QVERIFY(document().setInput("melt-rate", 0, "volume_mm3", 500, "volume"));
    m_window->chooseStep("bed-shape");
    press(Qt::Key_Z, Qt::ControlModifier);
    QVERIFY(document().history().runs.empty());
    QCOMPARE(m_window->page().step()->key, std::string("melt-rate"));
    QCOMPARE(message(), QString("Undone in Melt rate: volume."));
    m_window->chooseStep("bed-shape");
    press(Qt::Key_Y, Qt::ControlModifier);
    QCOMPARE(document().history().runs.size(), std::size_t{1});
    QCOMPARE(m_window->page().step()->key, std::string("melt-rate"));
    QCOMPARE(message(), QString("Done again in Melt rate: volume."));
    QVERIFY(document().setNotes("melt-rate", document().history().runs[0].id, "seen"));
    QVERIFY(message().isEmpty());  // the next edit takes the message away
    press(Qt::Key_Z, Qt::ControlModifier);
    QVERIFY(message().isEmpty());  // in sight nothing need be said
  }

  /// An entry into an accepted run begins a new one and says so; a slip is put right in the first instead.
  void anEntryIntoAnAcceptedRunBeginsANewOne() {
    QVERIFY(m_window->openFile(path()));
    m_window->chooseStep("melt-rate");
    QVERIFY(document().setInput("melt-rate", 0, "volume_mm3", 500, "volume"));
    QCoreApplication::processEvents();
    const RecordId first = document().history().runs[0].id;
    QVERIFY(accept(document(), first));
    QCoreApplication::processEvents();
    auto* slip = m_window->findChild<QPushButton*>("slipButton");
    QVERIFY(!slip->isVisibleTo(&m_window->page()));
    emit m_window->page().form().edited("volume_mm3", 600, "volume");
    QCoreApplication::processEvents();
    QCOMPARE(document().history().runs.size(), std::size_t{2});
    QVERIFY(document().history().runs[0].accepted());
    QCOMPARE(m_window->page().run()->id, document().history().runs[1].id);
    QVERIFY(slip->isVisibleTo(&m_window->page()));
    QTimer::singleShot(0, this, [] {
      auto* ask = qobject_cast<QInputDialog*>(QApplication::activeModalWidget());
      ask->setTextValue("typed 500 for 600");
      ask->accept();
    });
    slip->click();
    QCoreApplication::processEvents();
    QCOMPARE(document().history().runs.size(), std::size_t{1});
    QCOMPARE(m_window->page().run()->id, first);
    QCOMPARE(m_window->page().run()->inputs["volume_mm3"].get<int>(), 600);
    QCOMPARE(m_window->page().run()->corrections.at(0).reason, std::string("typed 500 for 600"));
    QVERIFY(m_window->page().run()->accepted() && !slip->isVisibleTo(&m_window->page()));
  }

  void acceptedWithFaultsIsSaid() {
    QVERIFY(m_window->openFile(path()));
    m_window->chooseStep("safety");
    QVERIFY(document().addRun("safety", ""));
    const RecordId run = document().history().runs[0].id;
    Evaluated evaluated;
    evaluated.result.addFinding("a", Severity::fault, "One.");
    evaluated.result.addFinding("b", Severity::fault, "Two.");
    evaluated.inputsHash = hashOf(document().history().runs[0].inputs);
    accept(document(), run);
    document().holdResult(run, evaluated);
    QCoreApplication::processEvents();
    QVERIFY2(standing().contains("Accepted with 2 faults."), qPrintable(standing()));
  }

  void anOverrideCanBeWithdrawn() {
    QVERIFY(m_window->openFile(path()));
    m_window->chooseStep("power-up");
    auto* decide = m_window->findChild<QPushButton*>("decideButton");
    QCOMPARE(decide->text(), QString("Override…"));
    QVERIFY(document().mark("power-up", StepMark::Kind::overridden, "bench supply"));
    QCoreApplication::processEvents();
    QCOMPARE(decide->text(), QString("Withdraw override"));
    decide->click();
    QCoreApplication::processEvents();
    QVERIFY(document().history().marks.empty());
    QCOMPARE(decide->text(), QString("Override…"));
  }

  void aDamagedCaptureIsSaidAfterOpening() {
    {
      auto file = MachineFile::open(path().toStdString());
      QVERIFY(file);
      const auto hash = (*file)->addBlob("front" + std::string(50000, 'x'), "front.csv");
      StepRun run{3, 2, "belt-tension", "", Json::object(), "", "", {}};
      run.inputs["plucks"] = {{{"sound", {{"file", "front.csv"}, {"sha256", *hash}}}}};
      QVERIFY((*file)->apply({std::nullopt, run, "run"}));
    }
    QFile file(path());
    QVERIFY(file.open(QIODevice::ReadWrite));
    file.seek(file.readAll().indexOf("frontxxx") + 300);
    file.write("y");
    file.close();
    QVERIFY(m_window->openFile(path()));
    QTRY_VERIFY2(message().contains("The file front.csv is damaged"), qPrintable(message()));
    QVERIFY(document().setNotes("belt-tension", 3, "seen"));
    QVERIFY(message().contains("front.csv"));  // stays
  }

  void aReadOnlyMachineAsksForNoRun() {
    QVERIFY(m_window->openFile(path()));
    MainWindow second(Palette::light());
    QVERIFY(second.openFile(path()));
    second.show();
    const QString sentence = QString::fromStdString(second.document()->file().readOnlySentence());
    QCOMPARE(second.findChild<QLabel*>("messageLabel")->text(), sentence);
    QVERIFY(!second.findChild<QLabel*>("standingLabel")->text().contains(sentence));  // said once
  }

  void largeReachesEveryPart() {
    QVERIFY(m_window->openFile(path()));
    const auto sizes = [&] {
      std::map<QString, double> all;
      for (const char* name : {"stepTitle", "machineButton", "stepList", "acceptButton"}) {
        all[name] = m_window->findChild<QWidget*>(name)->font().pointSizeF();
      }
      return all;
    };
    const auto before = sizes();
    setTypeSize(*qApp, 13);
    for (const auto& [name, size] : sizes()) {
      QVERIFY2(std::abs(size / before.at(name) - 1.3) < 0.05,
               qPrintable(name + QString(" %1 %2").arg(before.at(name)).arg(size)));
    }
    setTypeSize(*qApp, 10);
    QCOMPARE(sizes(), before);
  }
};

FETTLE_TEST(TestMainWindow)
#include "test_main_window.moc"
