#include <QTest>

#include "core/report/build_report.h"
#include "tests/core/report/small_history.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// Expected: the grammar of RFC 4180, section 2, read by a reader of this test's own; values are those of
/// the evaluation, to the last bit.
class TestReportCsv : public QObject {
  Q_OBJECT

  using Rows = std::vector<QStringList>;

  static Rows parsed(const std::string& csv) {
    Rows rows{{QString()}};
    const QString text = QString::fromStdString(csv);
    bool quoted = false;
    for (qsizetype i = 0; i < text.size(); ++i) {
      const QChar c = text[i];
      if (quoted && c == '"' && i + 1 < text.size() && text[i + 1] == '"') {
        rows.back().back() += text[++i];
      } else if (c == '"') {
        quoted = !quoted;
      } else if (!quoted && c == ',') {
        rows.back() << QString();
      } else if (!quoted && c == '\r') {
        ++i;  // the line feed behind it
        rows.push_back({QString()});
      } else {
        rows.back().back() += c;
      }
    }
    rows.pop_back();
    return rows;
  }

  struct Tables {
    Rows results, settings, findings;
  };

  static Tables tables(const History& history, RecordId session) {
    const Rows rows = parsed(reportAsCsv(history, session));
    const QStringList between{QString()};
    const auto first = std::find(rows.begin(), rows.end(), between);
    const auto second = std::find(first + 1, rows.end(), between);
    return {{rows.begin(), first}, {first + 1, second}, {second + 1, rows.end()}};
  }

  static QStringList rowOf(const Rows& rows, const QString& step, const QString& code) {
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const QStringList& cells) {
      return cells[1] == step && cells[4] == code;
    });
    return row == rows.end() ? QStringList() : *row;
  }

 private slots:
  void quantitiesAsEvaluated() {
    const History history = smallHistory();
    const Rows results = tables(history, 1).results;
    QCOMPARE(results[0].join(','),
             QString("session,step,run,subject,id,label,value,unit,u,U,dof,low,high,verdict,why"));
    const StepResult& result = history.evaluated.at(10).result;
    QVERIFY(!result.values.empty());
    QCOMPARE(results.size(), 1 + result.values.size() + result.texts.size());
    for (std::size_t i = 0; i < result.values.size(); ++i) {
      const QStringList& row = results[i + 1];
      const ResultValue& value = result.values[i];
      QCOMPARE(row.size(), 15);
      QCOMPARE(row[0], QString("2026-03-01T09:00:00"));
      QCOMPARE(row[1], QString("probe-position"));
      QCOMPARE(row[2], QString("1"));
      QCOMPARE(row[4], QString::fromStdString(value.id));
      if (value.quantity) {
        QCOMPARE(row[6].toDouble(), value.quantity->value);
        QCOMPARE(row[8].isEmpty(), !value.quantity->u.has_value());
        QCOMPARE(row[9].toDouble(), expandedUncertainty(*value.quantity).value_or(0));
      } else {
        QVERIFY(row[6].isEmpty() && !row[14].isEmpty());
      }
    }
  }

  void settingsInTheSecondTable() {
    const Rows settings = tables(smallHistory(), 1).settings;
    QCOMPARE(settings[0].join(','),
             QString("setting,label,as found,found on,as left,unit,u,U,step,adopted on"));
    const auto row = std::find_if(settings.begin(), settings.end(),
                                  [](const QStringList& cells) { return cells[0] == "probe_offset_x"; });
    QVERIFY(row != settings.end());
    QCOMPARE(row->mid(2), QStringList({"30", "2026-03-01T08:00:00", "30.07", "mm", "0.25", "0.5",
                                       "probe-position", "2026-03-01T09:41:00"}));
  }

  void findingsRefusalsAndGatesInTheThirdTable() {
    History history = smallHistory();
    Evaluated& evaluated = history.evaluated.at(10);
    evaluated.result.findings = {{"no-reach", Severity::fault, "It reaches nothing.", "config-review"}};
    evaluated.result.missing = {"marks[1].probe_x"};
    evaluated.problem = "Marks, row 1: refused.";
    const Rows findings = tables(history, 1).findings;
    QCOMPARE(findings[0].join(','), QString("session,step,run,subject,finding,severity,text,see"));
    QCOMPARE(rowOf(findings, "probe-position", "no-reach").mid(2),
             QStringList({"1", "", "no-reach", "fault", "It reaches nothing.", "config-review"}));
    QCOMPARE(rowOf(findings, "probe-position", "refused").value(6), QString("Marks, row 1: refused."));
    QCOMPARE(rowOf(findings, "probe-position", "missing").value(6), QString("marks[1].probe_x"));
  }

  void quotesCommasAndLineEnds() {
    History history = smallHistory();
    const std::string nasty = "a \"b\",\r\nc";
    history.evaluated.at(10).result.texts = {{nasty, nasty, {}}};
    history.runs[0].subject = nasty;
    const Rows results = tables(history, 1).results;
    QCOMPARE(results.back().size(), 15);
    QCOMPARE(results.back()[3], QString::fromStdString(nasty));
    QCOMPARE(results.back()[6], QString::fromStdString(nasty));
  }

  void anEmptyHistoryHasHeadsOnly() {
    const auto [results, settings, findings] = tables({}, 0);
    QCOMPARE(results.size(), std::size_t{1});
    QCOMPARE(settings.size(), std::size_t{1});
    // A gate that nobody opened is said even then.
    QCOMPARE(findings.size(), std::size_t{2});
    QVERIFY(!rowOf(findings, "power-up", "blocked").isEmpty());
  }
};

FETTLE_TEST(TestReportCsv)
#include "test_report_csv.moc"
