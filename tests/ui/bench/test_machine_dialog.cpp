#include <QTemporaryDir>
#include <QTest>
#include <QtWidgets>

#include "tests/support/test_main.h"
#include "ui/bench/findings_panel.h"
#include "ui/bench/machine_dialog.h"
#include "ui/forms/input_form.h"
#include "ui/theme/look.h"

using namespace fettle;
using namespace fettle::ui;

/// The dialog of the machine by its keys: what OK and Cancel do, and what OK refuses.
class TestMachineDialog : public QObject {
  Q_OBJECT

  std::unique_ptr<MachineDialog> m_dialog;

  void show(const Json& sheet) {
    MachineRecord machine;
    machine.sheet = sheet;
    m_dialog = std::make_unique<MachineDialog>(machine, applyLook(*qApp, Look::light), false);
    m_dialog->show();
    QApplication::setActiveWindow(m_dialog.get());
    QVERIFY(QTest::qWaitForWindowActive(m_dialog.get()));
  }
  QDialogButtonBox* buttons() { return m_dialog->findChild<QDialogButtonBox*>(); }
  void pressOk() {
    auto* ok = buttons()->button(QDialogButtonBox::Ok);
    ok->setFocus();
    QTest::keyClick(ok, Qt::Key_Return);
  }
  QString focused() { return QApplication::focusWidget()->objectName(); }
  QString findings() {
    QCoreApplication::processEvents();  // what was shown before is gone then
    QString words;
    for (const auto* label : m_dialog->findChild<FindingsPanel*>()->findChildren<QLabel*>()) {
      words += label->text() + ' ';
    }
    return words;
  }

 private slots:
  void enterOnCancelCancels() {
    show({{"name", "Rig"}});
    auto* cancel = buttons()->button(QDialogButtonBox::Cancel);
    cancel->setFocus(Qt::TabFocusReason);
    QTest::keyClick(cancel, Qt::Key_Return);
    QVERIFY(!m_dialog->isVisible());
    QCOMPARE(m_dialog->result(), int(QDialog::Rejected));
  }

  void typingBeginsInTheName() {
    show(Json::object());
    QTest::keyClicks(QApplication::focusWidget(), "Rig");
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    QVERIFY(m_dialog->isVisible());
    QCOMPARE(m_dialog->machine().sheet.value("name", ""), std::string("Rig"));
    m_dialog->findChild<QTabWidget*>()->tabBar()->setFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    QVERIFY(m_dialog->isVisible());  // Enter is not OK
    pressOk();
    QCOMPARE(m_dialog->result(), int(QDialog::Accepted));
  }

  void okIsRefusedWhileAFaultStands() {
    show({{"name", "Rig"}, {"bed_min_y", 0}, {"bed_max_y", -250}});
    m_dialog->findChild<QTabWidget*>()->setCurrentIndex(2);
    pressOk();
    QVERIFY(m_dialog->isVisible());
    QCOMPARE(focused(), QString("bedMaxYLineEdit"));
    QVERIFY2(findings().contains("Bed y"), qPrintable(findings()));
    show(Json::object());
    pressOk();
    QVERIFY(m_dialog->isVisible());
    QVERIFY2(findings().contains("Name: an entry is needed."), qPrintable(findings()));
  }

  void okIsRefusedWhileATypedTextIsRefused() {
    show({{"name", "Rig"}});
    auto* box = m_dialog->findChild<QLineEdit*>("bedMaxYLineEdit");
    QVERIFY(box);
    box->setFocus();
    QTest::keyClicks(box, "wide");
    pressOk();
    QVERIFY(m_dialog->isVisible());
    QCOMPARE(focused(), QString("bedMaxYLineEdit"));
  }

  void okIsRefusedWhileATextInATableIsRefused() {
    show({{"name", "Rig"}});
    auto* instruments = m_dialog->findChild<InputForm*>("instrumentForm");
    m_dialog->findChild<QTabWidget*>()->setCurrentIndex(2);
    instruments->focusOn("instruments_list[1].r");
    QTest::keyClicks(QApplication::focusWidget(), "fine");
    pressOk();
    QVERIFY(m_dialog->isVisible());
    QVERIFY(instruments->isAncestorOf(QApplication::focusWidget()));
    pressOk();  // the refusal was seen
    QCOMPARE(m_dialog->result(), int(QDialog::Accepted));
  }

  void wordsAreNoNumberAsFound() {
    show({{"name", "Rig"}});
    auto* form = m_dialog->findChild<InputForm*>("foundForm");
    emit form->edited("as_found", Json::array({{{"setting", "travel_max_x"}, {"value", "lots"}}}), "row");
    const auto* problem = m_dialog->findChild<QLabel*>("foundProblem");
    QVERIFY2(problem->text().startsWith("Travel to x"), qPrintable(problem->text()));
    pressOk();
    QVERIFY(m_dialog->isVisible());
    QCOMPARE(m_dialog->findChild<QTabWidget*>()->currentIndex(), 1);
    emit form->edited("as_found", Json::array({{{"setting", "travel_max_x"}, {"value", "250,5"}}}), "row");
    QVERIFY(problem->text().isEmpty());
    pressOk();
    QCOMPARE(m_dialog->result(), int(QDialog::Accepted));
    QCOMPARE(m_dialog->machine().asFound.at("travel_max_x").value.number, std::optional(250.5));
  }

  void currentAboveTheRatedOneIsSaid() {
    show({{"name", "Rig"}, {"x.motor_current_A", 1.2}, {"x.motor_rated_A", 1.0}});
    QVERIFY2(findings().contains("rms or peak"), qPrintable(findings()));
    show({{"name", "Rig"}, {"x.motor_current_A", 1.2}, {"x.motor_rated_A", 1.0}, {"x.current_is", "rms"}});
    QVERIFY2(findings().contains("1.2 A rms"), qPrintable(findings()));
    // 1.4 A peak are 1.4/√2 = 0.99 A rms.
    show({{"name", "Rig"}, {"y.motor_current_A", 1.4}, {"y.motor_rated_A", 1.0}, {"y.current_is", "peak"}});
    QVERIFY2(!findings().contains("rms"), qPrintable(findings()));
  }
};

FETTLE_TEST(TestMachineDialog)
#include "test_machine_dialog.moc"
