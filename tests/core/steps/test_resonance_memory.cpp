#include <QTest>
#include <utility>
#include <vector>

#include "core/steps/contract/work_memory.h"
#include "tests/support/resonance_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

/// What was worked out before saves time and nothing else: each result is the one made afresh.
class TestResonanceMemory : public QObject, private ResonanceBench {
  Q_OBJECT
 private slots:
  void initTestCase() {
    captures = {{"centre", sweepOf(twoModes)}, {"front", sweepOf({{44.0, 0.06, 0.9}})}};
  }

  void resultsAreThoseMadeAfresh() {
    const auto sweepAt = [](const char* position) { return sweepRow("x", position, position); };
    StepContext remembering;
    remembering.memory = std::make_shared<WorkMemory>();
    const Json both = Json::array({sweepAt("centre"), sweepAt("front")});
    const std::vector<std::pair<const char*, Json>> edits{
        {"captures", Json::array({sweepAt("centre")})},
        {"path_deviation_mm", 0.2},
        {"captures", both},
        {"frequency_allowance", 0.1},
        {"residual_limit", 0.2},
        {"residual_limit", 0.05},
        {"segment_s", 0.64},
        {"path_deviation_mm", 0.05},
        {"captures", Json::array({sweepAt("front")})},
        {"captures", both},
    };
    Json inputs;
    std::string before;
    for (const auto& [key, value] : edits) {
      inputs[key] = value;
      const auto afresh = tried(inputs);
      const auto remembered = tried(inputs, remembering);
      QVERIFY(afresh && remembered);
      const std::string text = toJson(*afresh).dump();
      QVERIFY2(text != before, key);  // the edit matters
      QVERIFY2(toJson(*remembered).dump() == text, key);
      before = text;
    }
  }
};

FETTLE_TEST(TestResonanceMemory)
#include "test_resonance_memory.moc"
