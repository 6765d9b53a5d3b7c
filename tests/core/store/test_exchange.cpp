#include <QTest>

#include "core/history/evaluation.h"
#include "core/store/exchange.h"
#include "tests/core/store/store_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

class TestExchange : public QObject {
  Q_OBJECT

 private slots:
  /// Out as text and in again; the ids of fullHistory() are in the order of the text.
  void takesAWholeHistoryOutAndIn() {
    History history = fullHistory();
    Json& capture = history.runs[0].inputs["capture"];
    capture["sha256"] = sha256("bytes");
    history.runs[0].photos[0].sha256 = sha256("picture");
    const ExportedHistory exported = exportHistory(history, "files");
    QCOMPARE(exported.files.size(), 2U);
    const auto imported =
        importHistory(Json::parse(exported.json.dump()),
                      [&](const std::string& path) -> tl::expected<std::string, std::string> {
                        return path.ends_with("run 1.csv") ? "bytes" : "picture";
                      });
    QVERIFY2(imported, imported ? "" : imported.error().c_str());
    SAME_HISTORY(imported->history, history);
    QCOMPARE(imported->blobs.size(), 2U);
    QCOMPARE(imported->blobs.at(sha256("bytes")).bytes, std::string("bytes"));
  }

  void refusesAFileThatHasChanged() {
    History history = fullHistory();
    const ExportedHistory exported = exportHistory(history, "files");
    const auto imported = importHistory(exported.json, [](const std::string&) {
      return tl::expected<std::string, std::string>("other bytes");
    });
    QVERIFY(!imported);
    ONE_SENTENCE(imported.error());
  }

  /// What the form of the schema (resources/schema) does not have is refused by place and never dropped.
  void refusesWhatIsNoHistory_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::addColumn<QString>("place");
    const auto row = [](const char* name, const char* rest, const char* place) {
      QTest::newRow(name) << QByteArray(R"({"fettle":1,)") + rest + "}" << QString(place);
    };
    row("no machine", R"("sessions":[])", "machine");
    row("no name", R"("machine":{})", "machine.name");
    row("a sheet in the sheet", R"("machine":{"sheet":{"name":"a"}})", "machine.name");
    row("a word for a number", R"("machine":{"name":"a","travel_min_x":"left"})", "Travel from x");
    row("a slip in a key", R"("machine":{"name":"a"},"sesions":[])", "sesions");
    row("sessions no list", R"("machine":{"name":"a"},"sessions":5)", "sessions");
    row("a session without date", R"("machine":{"name":"a"},"sessions":[{}])", "sessions[1].date");
    row("a run without step", R"("machine":{"name":"a"},"sessions":[{"date":"2026-01-02","runs":[{}]}])",
        "sessions[1].runs[1].step");
    row("inputs no object",
        R"("machine":{"name":"a"},"sessions":[{"date":"d","runs":[{"step":"melt-rate","inputs":5}]}])",
        "sessions[1].runs[1].inputs");
    row("a negative resolution",
        R"("machine":{"name":"a"},"instruments":[{"name":"caliper","r":-0.01,"e":0.03}])",
        "instruments[1].r");
    row("hours below 0", R"("machine":{"name":"a"},"sessions":[{"date":"d","print_hours":-1}])",
        "sessions[1].print_hours");
    row("files without a name", R"("machine":{"name":"a"},"files":[{"path":"a.csv"}])", "files[1].file");
    row("a hash that is none", R"("machine":{"name":"a"},"files":[{"file":"a.csv","sha256":"12"}])",
        "files[1].sha256");
    row("a state that is none",
        R"("machine":{"name":"a"},"sessions":[{"date":"d","runs":[{"step":"melt-rate","state":"done"}]}])",
        "sessions[1].runs[1].state");
  }

  void refusesWhatIsNoHistory() {
    QFETCH(QByteArray, text);
    QFETCH(QString, place);
    const auto imported = importHistory(Json::parse(text.toStdString()), [](const std::string&) {
      return tl::expected<std::string, std::string>("");
    });
    QVERIFY(!imported);
    ONE_SENTENCE(imported.error());
    QVERIFY2(QString::fromStdString(imported.error()).contains(place), imported.error().c_str());
    QVERIFY(!QString::fromStdString(imported.error()).contains("exception"));
  }

  /// The states of a step in words (design, "What it looks like"); all but accepted follow from the inputs.
  void takesTheWordsOfAState() {
    for (const char* state : {"open", "empty", "incomplete", "computed", "accepted"}) {
      const auto imported = importHistory(
          {{"fettle", 1},
           {"machine", {{"name", "a"}}},
           {"sessions", {{{"date", "2026-01-02"}, {"runs", {{{"step", "melt-rate"}, {"state", state}}}}}}}},
          [](const std::string&) { return tl::expected<std::string, std::string>(""); });
      QVERIFY2(imported, state);
      QCOMPARE(imported->history.runs.at(0).accepted(), std::string(state) == "accepted");
    }
  }
};

FETTLE_TEST(TestExchange)
#include "test_exchange.moc"
