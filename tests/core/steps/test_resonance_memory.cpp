#include <QTest>
#include <map>

#include "core/steps/catalogue.h"
#include "core/steps/contract/work_memory.h"
#include "tests/support/described.h"
#include "tests/support/step_bench.h"
#include "tests/support/swept_machine.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// Two captures of an axis, by the names that stand for their files.
class KeptCaptures : public NoFiles {
 public:
  tl::expected<CapturePointer, std::string> capture(const Json& reference, const Field&) override {
    return m_captures.at(reference.at("file").get<std::string>());
  }

 private:
  static CapturePointer made(const std::vector<TrueMode>& modes) {
    const Shaking shaking;
    return captureOf(sweptSignal(modes, shaking), shaking.rate, shaking.seed, shaking.noise);
  }
  std::map<std::string, CapturePointer> m_captures{
      {"centre", made({{52.0, 0.05, 0.7}, {83.0, 0.04, 0.25}})}, {"front", made({{44.0, 0.06, 0.9}})}};
};

Json sweepAt(const char* position) {
  return {{"axis", "x"},        {"position", position}, {"sweep_from_hz", 5},
          {"sweep_to_hz", 120}, {"sweep_s", 30},        {"capture", {{"file", position}}}};
}

}  // namespace

/// What was worked out before saves time and nothing else: each result is the one made afresh.
class TestResonanceMemory : public QObject {
  Q_OBJECT
 private slots:
  void resultsAreThoseMadeAfresh() {
    KeptCaptures files;
    const Step& step = *findStep("resonance");
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
      const auto afresh = step.evaluate(inputs, {}, files);
      const auto remembered = step.evaluate(inputs, remembering, files);
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
