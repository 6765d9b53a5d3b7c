#include <sys/stat.h>

#include <QFile>
#include <QRegularExpression>

#include "tests/core/report/small_history.h"
#include "tests/support/test_main.h"
#include "tests/ui/report/pages_bench.h"
#include "ui/report/report_html.h"

using namespace fettle;
using namespace fettle::tests;

/// Expected: what went in; the rules of HTML for escaping and for ids (each once).
class TestWriteReport : public QObject {
  Q_OBJECT

  QTemporaryDir m_folder;

  static QByteArray content(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
  }

 private slots:
  void theEndingSaysHow() {
    const History history = smallHistory();
    for (const auto& [name, begin] : {std::pair{"a.pdf", "%PDF-"}, std::pair{"a.HTML", "<!DOCTYPE html>"},
                                      std::pair{"a.csv", "session,step,run,"}}) {
      const QString path = m_folder.filePath(name);
      QVERIFY(ui::writeReportFile(history, 1, path));
      QVERIFY2(content(path).startsWith(begin), name);
    }
    const auto refused = ui::writeReportFile(history, 1, m_folder.filePath("a.doc"));
    QVERIFY(!refused);
    QVERIFY(refused.error().endsWith("a.doc: a report is written as .pdf, .html or .csv."));
    QVERIFY(!QFile::exists(m_folder.filePath("a.doc")));
  }

  void whatCannotBeWrittenIsOneSentence() {
    const QString nowhere = m_folder.filePath("no/such/folder/a.pdf");
    const auto refused = ui::writeReportFile(smallHistory(), 1, nowhere);
    QVERIFY(!refused);
    QVERIFY(refused.error().startsWith(nowhere));
    QCOMPARE(refused.error().count('\n'), 0);
    QVERIFY(refused.error().endsWith('.'));
  }

  // What is no file stays what it is: a folder, or a device (here a pipe).
  void whatIsNoFileIsLeftAlone() {
    const QString folder = m_folder.filePath("folder.html");
    QVERIFY(QDir().mkdir(folder));
    QVERIFY(!ui::writeReportFile(smallHistory(), 1, folder));
    QVERIFY(QFileInfo(folder).isDir());
    const QString pipe = m_folder.filePath("pipe.html");
    QCOMPARE(mkfifo(qPrintable(pipe), 0600), 0);
    QVERIFY(!ui::writeReportFile(smallHistory(), 1, pipe));
    QVERIFY(QFileInfo::exists(pipe) && !QFileInfo(pipe).isFile());
  }

  void thePdfHoldsTheValues() {
    const QString path = m_folder.filePath("values.pdf");
    QVERIFY(ui::writeReportFile(smallHistory(), 1, path));
    if (!canReadPdf()) {
      QSKIP("pdftotext is not installed (Debian: poppler-utils).");
    }
    const QString all = pagesOf(path).join(' ').simplified();
    for (const char* words : {"Commissioning report: Test rig", "30.07 ±", "slipped, saw it move",
                              "Marks drawn on tape.", "not adopted", "✓ pass", "↻ due"}) {
      QVERIFY2(all.contains(words), words);
    }
  }

  void everythingIsEscaped() {
    const std::string evil = "<script>alert(\"1\")</script> & 'x'";
    Chart chart = madeCurve();
    chart.title = chart.series[0].name = chart.x.label = evil;
    ReportTable table;
    table.columns = {{evil, false}, {evil, true}};
    table.rows.push_back({{evil, evil}, true});
    Report report =
        reportOf({Heading{1, evil}, Paragraph{evil, true}, Caution{evil}, KeyValues{{{evil, evil}}}, table,
                  Finding{"code", Severity::fault, evil, ""}, chart});
    report.title = report.machine = report.date = report.program = evil;
    const QString page = ui::htmlPage(report);
    QVERIFY(!page.contains("<script", Qt::CaseInsensitive));
    QVERIFY(page.count("&lt;script&gt;") >= 16);
  }

  void aPageForItself() {
    const QString page = ui::htmlPage(reportOf({madeCurve(), madeCurve(), longTable(3)}));
    QCOMPARE(page.count("<svg"), 2);
    QVERIFY(!page.contains("<?xml"));
    QVERIFY(!page.contains(QRegularExpression("(src|href)=\"(?!#|data:)")));
    QSet<QString> ids;
    auto found = QRegularExpression("\\bid=\"([^\"]+)\"").globalMatch(page);
    while (found.hasNext()) {
      const QString id = found.next().captured(1);
      QVERIFY2(!ids.contains(id), qPrintable(id));
      ids.insert(id);
    }
    auto used = QRegularExpression("(?:url\\(#|href=\"#)([^)\"]+)").globalMatch(page);
    while (used.hasNext()) {
      const QString id = used.next().captured(1);
      QVERIFY2(ids.contains(id), qPrintable(id));
    }
  }

  void whatWasLeftOutIsStruck() {
    ReportTable table;
    table.columns = {{"Reading", true}, {"Left out because", false}};
    table.rows = {{{"1.5", ""}, false}, {{"9.9", "slipped"}, true}};
    const QString page = ui::htmlPage(reportOf({table}));
    QVERIFY(page.contains("<s>9.9</s>") && page.contains("<td>slipped</td>"));
    QVERIFY(!page.contains("<s>1.5"));
  }
};

FETTLE_TEST(TestWriteReport)
#include "test_write_report.moc"
