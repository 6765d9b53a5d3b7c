#include "ui/report/report_pages.h"

#include <QPrinter>
#include <QRegularExpression>

#include "tests/support/test_main.h"
#include "tests/ui/report/pages_bench.h"

using namespace fettle;
using namespace fettle::tests;

/// Expected: what went in, read back from the file by pdftotext, pdfimages and pdfinfo.
class TestReportPages : public QObject {
  Q_OBJECT

  QTemporaryDir m_folder;

  /// The pages of a report as text; none when it could not be written.
  QStringList pages(const Report& report) {
    const QString path = m_folder.filePath("report.pdf");
    if (const auto written = ui::writePdf(report, path); !written) {
      qWarning("%s", qPrintable(written.error()));
      return {};
    }
    return pagesOf(path);
  }

  static QString flat(const QString& page) { return page.simplified(); }

 private slots:
  void initTestCase() {
    if (!canReadPdf()) {
      QSKIP("pdftotext is not installed (Debian: poppler-utils).");
    }
  }

  void everyPageHasHeadAndFoot() {
    const auto found = pages(reportOf({Heading{1, "Title"}, longTable(150)}));
    QVERIFY(found.size() > 2);
    for (qsizetype i = 0; i < found.size(); ++i) {
      const QString page = flat(found.at(i));
      QVERIFY2(page.startsWith("Test rig Commissioning report"), qPrintable(page));
      const QString foot =
          QStringLiteral("2026-03-01 · Fettle 9.8.7 page %1 of %2").arg(i + 1).arg(found.size());
      QVERIFY2(page.endsWith(foot), qPrintable(page));
    }
  }

  void tableHeadsAreRepeatedAndNoRowIsLost() {
    const auto found = pages(reportOf({longTable(150)}));
    for (const auto& page : found) {
      QCOMPARE(page.count("Reading head"), 1);
    }
    const QString all = flat(found.join(' '));
    for (int i = 1; i <= 150; ++i) {
      QVERIFY2(all.contains(QStringLiteral(" %1 value-%1 plain").arg(i)), qPrintable(QString::number(i)));
    }
  }

  // However full the page is above: the words below a heading stand on its page, and so does a chart on the
  // page of its title.
  void headingsAreNeverAlone() {
    for (int lines = 40; lines < 75; ++lines) {
      ReportBlocks blocks;
      for (int i = 0; i < lines; ++i) {
        blocks.emplace_back(Paragraph{"filling", false});
      }
      blocks.emplace_back(Heading{2, "Main heading"});
      blocks.emplace_back(Heading{4, "Small heading"});
      blocks.emplace_back(Paragraph{"words below", false});
      blocks.emplace_back(madeCurve());
      const auto found = pages(reportOf(std::move(blocks)));
      const QStringList withHeading = found.filter("Main heading");
      QCOMPARE(withHeading.size(), 1);
      QVERIFY(withHeading[0].contains("Small heading") && withHeading[0].contains("words below"));
      const QStringList withTitle = found.filter("Made-up curve");
      QCOMPARE(withTitle.size(), 1);
      QVERIFY(withTitle[0].contains("flow, mm³/s"));
    }
  }

  // As a step begins: what explains a heading and what warns do not stand alone with it.
  void aStepDoesNotBeginAtThePageFoot() {
    for (int lines = 30; lines < 75; ++lines) {
      ReportBlocks blocks;
      for (int i = 0; i < lines; ++i) {
        blocks.emplace_back(Paragraph{"filling", false});
      }
      blocks.emplace_back(Heading{2, "Main heading"});
      blocks.emplace_back(Paragraph{"What it is for.", true});
      blocks.emplace_back(Caution{"It is hot."});
      blocks.emplace_back(Heading{3, "Run heading"});
      blocks.emplace_back(Paragraph{"words below", false});
      const auto found = pages(reportOf(std::move(blocks)));
      const QStringList withHeading = found.filter("Main heading");
      QCOMPARE(withHeading.size(), 1);
      QVERIFY(withHeading[0].contains("words below"));
    }
  }

  // 120 rows of narrow columns of readings stand beside each other on one page, none is lost, and the
  // points of a column stand below each other.
  void longTablesOfNumbersStandBesideThemselves() {
    ReportTable table;
    table.columns = {{"#", true}, {"Reading", true}, {"Axis", false}};
    for (int i = 1; i <= 120; ++i) {
      table.rows.push_back({{std::to_string(i), i % 2 == 0 ? "140" : "60.02", "x"}, false});
    }
    const auto found = pages(reportOf({table}));
    QCOMPARE(found.size(), 1);
    QCOMPARE(found.at(0).count("60.02"), 60);
    QCOMPARE(found.at(0).count("140"), 60);
    const QString layout = found.at(0);
    QList<qsizetype> ends;
    for (const QString& line : layout.split('\n')) {
      const QRegularExpressionMatch match = QRegularExpression("^ *\\d+ +(60|140)(?=\\.| |$)").match(line);
      if (match.hasMatch()) {
        ends << match.capturedEnd(1);
      }
    }
    QVERIFY(ends.size() >= 30);
    const auto [first, last] = std::minmax_element(ends.begin(), ends.end());
    QVERIFY2(*last - *first <= 1, qPrintable(layout));
  }

  void aChartIsDrawnInVectors() {
    const auto found = pages(reportOf({madeCurve(), madeCurve(), madeCurve(), madeCurve()}));
    const auto images = said("pdfimages", {"-list", m_folder.filePath("report.pdf")});
    QCOMPARE(images.trimmed().count('\n'), 1);  // two lines of head, no image
    QCOMPARE(found.join(' ').count("Made-up curve"), 4);
    QCOMPARE(found.join(' ').count("delivered"), 4);
  }

  // A net of 30 × 4 heights is wider than a page: all its numbers are there, each part with its y.
  void wideTablesAreParted() {
    ReportTable grid;
    grid.columns.push_back({"y\u00a0\\\u00a0x", true});
    for (int i = 0; i < 30; ++i) {
      grid.columns.push_back({"x" + std::to_string(100 + i), true});
    }
    for (int j = 0; j < 4; ++j) {
      ReportTable::Row row{{"y" + std::to_string(j)}, false};
      for (int i = 0; i < 30; ++i) {
        row.cells.push_back("−0." + std::to_string(1000 + 100 * j + i));
      }
      grid.rows.push_back(row);
    }
    const auto found = pages(reportOf({grid}));
    const QString all = flat(found.join(' '));
    for (const auto& row : grid.rows) {
      for (std::size_t i = 1; i < row.cells.size(); ++i) {
        QCOMPARE(all.count(QString::fromStdString(row.cells[i])), 1);
      }
    }
    const QRegularExpression heading(R"(y\s?\\\s?x)");
    QVERIFY2(all.count("y3") > 1 && all.contains(heading), qPrintable(all));
    QCOMPARE(all.count("y3"), all.count(heading));
  }

  void numbersKeepTheirUnits() {
    ReportTable table;
    table.columns = {{"Setting", false}, {"Value", true}, {"Words", false}};
    const std::string words = "many words that ask for more room than the page can give them in one line";
    for (int i = 0; i < 8; ++i) {
      table.rows.push_back({{words, "2574 ± 11 mm/s²", words}, false});
    }
    const auto found = pages(reportOf({table}));
    QCOMPARE(found.join(' ').count("± 11 mm/s²"), 8);
  }

  void longNotesGoOnOverThePage() {
    QString notes;
    for (int i = 0; i < 120; ++i) {
      notes += QStringLiteral("line-%1\n").arg(i);
    }
    ReportTable table;
    table.columns = {{"Remark", false}};
    table.rows.push_back({{notes.toStdString()}, false});
    const auto found = pages(reportOf({Paragraph{notes.toStdString(), false}, table}));
    const QString all = flat(found.join(' '));
    for (int i = 0; i < 120; ++i) {
      QCOMPARE(all.count(QRegularExpression(QStringLiteral("line-%1\\b").arg(i))), 2);
    }
  }

  void aPageBreakBeginsAPage() {
    const auto found =
        pages(reportOf({Paragraph{"before", false}, PageBreak{}, Heading{2, "after"}, PageBreak{}}));
    QCOMPARE(found.size(), 2);
    QVERIFY(found.at(1).contains("after"));
  }

  void anEmptyReportIsOnePage() {
    const auto found = pages(reportOf({}));
    QCOMPARE(found.size(), 1);
    QVERIFY(found.at(0).contains("page 1 of 1"));
  }

  // The same painter on a printer that writes a file: the same words on the same pages.
  void printsAsItWrites() {
    const Report report = reportOf({Heading{1, "Title"}, longTable(90), madeCurve()});
    const auto written = pages(report);
    QVERIFY(!written.isEmpty());
    const QString path = m_folder.filePath("printed.pdf");
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(path);
    printer.setPageSize(QPageSize(QPageSize::A4));
    QVERIFY(ui::paintPages(printer, report));
    const auto printed = pagesOf(path);
    QCOMPARE(printed.size(), written.size());
    for (qsizetype i = 0; i < printed.size(); ++i) {
      QCOMPARE(flat(printed.at(i)), flat(written.at(i)));
    }
  }
};

FETTLE_TEST(TestReportPages)
#include "test_report_pages.moc"
