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
    const ExportedHistory exported = exportHistory(history, "files");
    QCOMPARE(exported.files.size(), 1U);
    const auto imported = importHistory(Json::parse(exported.json.dump()), [&](const std::string& path) {
      return path == exported.files[0].path ? tl::expected<std::string, std::string>("bytes")
                                            : tl::unexpected<std::string>(path + " is not there.");
    });
    QVERIFY2(imported, imported ? "" : imported.error().c_str());
    SAME_HISTORY(imported->history, history);
    QCOMPARE(imported->blobs.size(), 1U);
    QCOMPARE(imported->blobs.begin()->second.second, std::string("bytes"));
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
};

FETTLE_TEST(TestExchange)
#include "test_exchange.moc"
