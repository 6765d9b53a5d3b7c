#include <QDir>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QTemporaryDir>
#include <QTest>

#include "tests/support/imported_machine.h"
#include "tests/support/test_main.h"

using namespace fettle::tests;

namespace {

struct Ran {
  int status;
  QByteArray out, err;
};

Ran run(const QStringList& arguments, const QByteArray& input = {}) {
  QProcess process;
  process.start(FETTLE_BATCH, arguments);
  process.write(input);
  process.closeWriteChannel();
  const bool ended = process.waitForFinished(60000) && process.exitStatus() == QProcess::NormalExit;
  return {ended ? process.exitCode() : -1, process.readAllStandardOutput(), process.readAllStandardError()};
}

QJsonObject object(const QByteArray& text) {
  return QJsonDocument::fromJson(text).object();
}

QByteArray content(const QString& path) {
  QFile file(path);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

}  // namespace

/// The headless program as a person or a script calls it: the demo in, verified, out and in again, reports,
/// and one sentence with status 2 for what cannot be accepted.
class TestHeadless : public QObject {
  Q_OBJECT

 private slots:
  void initTestCase() {
    QVERIFY(m_folder.isValid());
    const Ran made = run({"import", demoHistory, file()});
    QVERIFY2(made.status == 0, made.err);
  }

  void importedFileIsSound() {
    const Ran checked = run({"verify", file()});
    QVERIFY2(checked.status == 0, checked.err);
    QVERIFY(checked.out.contains("agree"));
  }

  void aFileShorterByOneByteIsDamaged() {
    const QString copy = m_folder.filePath("shortened.fettle");
    QFile shortened(copy);
    QVERIFY(shortened.open(QIODevice::WriteOnly));
    shortened.write(content(file()).chopped(1));
    shortened.close();
    const Ran checked = run({"verify", copy});
    QCOMPARE(checked.status, 2);
    QVERIFY2(checked.err.contains("damaged"), checked.err);
    QCOMPARE(checked.err.count('\n'), 1);
  }

  void importRefusesToOverwrite() {
    const Ran again = run({"import", demoHistory, file()});
    QCOMPARE(again.status, 2);
    QVERIFY(again.err.contains("already there"));
  }

  void exportAndImportLoseNothing() {
    const QString first = m_folder.filePath("first.json");
    const QString second = m_folder.filePath("second.json");
    QCOMPARE(run({"export", file(), first}).status, 0);
    const QString copy = m_folder.filePath("copy.fettle");
    QCOMPARE(run({"import", first, copy}).status, 0);
    QCOMPARE(run({"export", copy, second}).status, 0);
    QVERIFY(!content(first).isEmpty());
    QCOMPARE(content(second).replace("second-files", "first-files"), content(first));
  }

  void reportsAreWritten_data() {
    QTest::addColumn<QByteArray>("holds");
    QTest::newRow("pdf") << QByteArray("%PDF");
    QTest::newRow("html") << QByteArray("<svg");
    QTest::newRow("csv") << QByteArray("melt-rate,1,,flow_limit");
  }
  void reportsAreWritten() {
    QFETCH(QByteArray, holds);
    const QString ending = QTest::currentDataTag();
#ifndef FETTLE_HAS_DRAWING
    if (ending != "csv") {
      QSKIP("The headless program was built without what draws.");
    }
#endif
    const QString out = m_folder.filePath("report." + ending);
    const Ran done = run({"report", file(), "-o", out});
    QVERIFY2(done.status == 0, done.err);
    QVERIFY(QFileInfo(out).size() > 1000);
    QVERIFY(content(out).contains(holds));
  }

  void describeNamesEveryField() {
    const Ran all = run({"describe"});
    QCOMPARE(all.status, 0);
    const QJsonArray steps = QJsonDocument::fromJson(all.out).array();
    QVERIFY(!steps.isEmpty());
    for (const auto& step : steps) {
      QVERIFY(!step.toObject()["fields"].toArray().isEmpty());
      QVERIFY(!step.toObject()["results"].toArray().isEmpty());
    }
  }

  void incompleteInputIsNoError() {
    const Ran result = run({"evaluate", "melt-rate", "-"}, "{}");
    QCOMPARE(result.status, 0);
    QCOMPARE(object(result.out)["complete"].toBool(true), false);
  }

  void aBadCellIsAFindingWithItsPlace() {
    const Ran flow =
        run({"evaluate", "melt-rate", "-"},
            R"({"steps": [{"flow_mm3_s": "fast", "delivered": 1}, {"flow_mm3_s": 2, "delivered": 1}]})");
    QCOMPARE(flow.status, 0);
    QJsonObject refused;
    for (const auto& one : object(flow.out)["findings"].toArray()) {
      refused = one.toObject()["code"] == "refused" ? one.toObject() : refused;
    }
    QCOMPARE(refused["severity"].toString(), QString("fault"));
    QCOMPARE(refused["at"].toString(), QString("steps[1].flow_mm3_s"));
  }

  /// The headless program reports gates in findings and still computes.
  void aGateIsSaidAndDoesNotStopTheWork() {
    QFile sheet(m_folder.filePath("gates.json"));
    const auto codes = [&](const QByteArray& accepted, const char* step, const QByteArray& inputs) {
      if (!sheet.open(QIODevice::WriteOnly)) {
        return QStringList{"no sheet"};
      }
      sheet.write(R"({"hot_end_liner": "yes", "accepted": )" + accepted + "}");
      sheet.close();
      const Ran ran = run({"evaluate", step, "-", "--machine", sheet.fileName()}, inputs);
      const QJsonObject result = object(ran.out);
      QStringList found{result["complete"].toBool() ? "complete" : "incomplete"};
      for (const auto& finding : result["findings"].toArray()) {
        const QJsonObject one = finding.toObject();
        found << one["code"].toString() + " " + one["see"].toString();
      }
      return found;
    };
    const QByteArray offset = R"({"direct": {"offset_x": 30, "offset_y": 4}})";
    const QStringList faulty = codes(R"({"power-up": {"faults": 1}})", "probe-position", offset);
    QVERIFY2(faulty.contains("complete") && faulty.contains("blocked power-up"),
             qPrintable(faulty.join('|')));
    QVERIFY(!codes("{}", "probe-position", offset).contains("blocked power-up"));
    QVERIFY(codes("{}", "power-up", R"({"room_C": 20})").contains("blocked safety"));
    QVERIFY(!codes(R"({"safety": {"critical_open": 0}})", "power-up", R"({"room_C": 20})")
                 .contains("blocked safety"));
  }

  /// Design, "The machine file": of a damaged file what can be read can be exported. One bit of a capture
  /// is turned, which neither the database nor a result would tell; all else is sound.
  void aDamagedCaptureDoesNotKeepTheRestBack() {
    QByteArray bytes = content(file());
    const qsizetype at =
        bytes.lastIndexOf(content(QFileInfo(demoHistory).path() + "/captures/x-front.csv").left(60));
    QVERIFY(at > 0);
    bytes[at + 30] = static_cast<char>(bytes[at + 30] ^ 1);
    QFile damaged(m_folder.filePath("damaged.fettle"));
    QVERIFY(damaged.open(QIODevice::WriteOnly));
    damaged.write(bytes);
    damaged.close();
    const Ran checked = run({"verify", damaged.fileName()});
    QCOMPARE(checked.status, 2);
    QVERIFY2(checked.err.contains("x-front.csv is damaged"), checked.err);
    QCOMPARE(checked.err.count('\n'), 1);
    const Ran out = run({"export", damaged.fileName(), m_folder.filePath("damaged.json")});
    QVERIFY2(out.status == 0, out.err);
    QVERIFY2(out.out.contains("is damaged"), out.out);
    QVERIFY(content(m_folder.filePath("damaged.json")).contains("probe-position"));
    QCOMPARE(content(damaged.fileName()), bytes);
  }

  void refusedInputIsOneSentence_data() {
    QTest::addColumn<QStringList>("arguments");
    QTest::addColumn<QByteArray>("input");
    QTest::newRow("no verb") << QStringList{} << QByteArray();
    QTest::newRow("no such verb") << QStringList{"whistle"} << QByteArray();
    QTest::newRow("no step") << QStringList{"evaluate"} << QByteArray();
    QTest::newRow("a number too large")
        << QStringList{"evaluate", "melt-rate", "-"} << QByteArray(R"({"margin": 1e999})");
    QTest::newRow("no such ending") << QStringList{"report", file(), "-o", "report.txt"} << QByteArray();
    for (const char* accepted : {"[]", R"({"power-up": {"faults": []}})"}) {
      QFile sheet(m_folder.filePath(QStringLiteral("sheet%1.json").arg(qstrlen(accepted))));
      QVERIFY(sheet.open(QIODevice::WriteOnly));
      sheet.write(QByteArray(R"({"accepted": )") + accepted + "}");
      QTest::newRow(accepted) << QStringList{"evaluate", "melt-rate", "-", "--machine", sheet.fileName()}
                              << QByteArray("{}");
    }
    QTest::newRow("no such step") << QStringList{"evaluate", "nothing", "-"} << QByteArray("{}");
    QTest::newRow("no JSON") << QStringList{"evaluate", "melt-rate", "-"} << QByteArray("{");
    QTest::newRow("no such field") << QStringList{"evaluate", "probe-position", "-"}
                                   << QByteArray(R"({"margins": 5})");
    QTest::newRow("missing file") << QStringList{"evaluate", "bed-shape", "-"}
                                  << QByteArray(R"({"grid": {"file": "is-not-there.txt"}})");
    QFile strange(m_folder.filePath("strange.csv"));
    QVERIFY(strange.open(QIODevice::WriteOnly));
    strange.write("alpha,beta\n1,2\n3,4\n");
    QTest::newRow("no header fits")
        << QStringList{"evaluate", "melt-rate", "-"}
        << QStringLiteral(R"({"steps": {"file": "%1"}})").arg(strange.fileName()).toUtf8();
    QTest::newRow("no machine file") << QStringList{"verify", demoHistory} << QByteArray();
  }

  void refusedInputIsOneSentence() {
    QFETCH(QStringList, arguments);
    QFETCH(QByteArray, input);
    const Ran result = run(arguments, input);
    QCOMPARE(result.status, 2);
    QVERIFY(result.out.trimmed().isEmpty());
    QCOMPARE(result.err.trimmed().count('\n'), 0);
    QVERIFY2(!result.err.contains("inside the program"), result.err);
    QVERIFY(result.err.size() > 10);
    QVERIFY2(!result.err.contains("required"),
             result.err);  // a word of the library that reads the arguments
    QVERIFY2(!result.err.contains("exception") && !result.err.contains("went wrong inside"), result.err);
  }

 private:
  QString file() const {
    return m_folder.filePath("demo.fettle");
  }
  QTemporaryDir m_folder;
};

FETTLE_TEST(TestHeadless)
#include "test_headless.moc"
