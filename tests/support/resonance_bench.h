#pragma once
#include <QString>
#include <functional>
#include <map>

#include "core/steps/catalogue.h"
#include "tests/support/described.h"
#include "tests/support/step_bench.h"
#include "tests/support/swept_machine.h"

namespace fettle::tests {

/// The step and captures made for it, by the name that stands for their file.
class ResonanceBench : public NoFiles {
 public:
  std::map<std::string, CapturePointer> captures;

  tl::expected<CapturePointer, std::string> capture(const Json& reference, const Field&) override {
    return captures.at(reference.at("file").get<std::string>());
  }

  tl::expected<StepResult, std::string> tried(const Json& inputs, const StepContext& context = {}) {
    return findStep("resonance")->evaluate(inputs, context, *this);
  }

  /// The result of inputs that must not be refused, described and with sound charts; else the program ends.
  StepResult run(const Json& inputs, const StepContext& context = {}) {
    const auto result = tried(inputs, context);
    if (!result) {
      qFatal("refused: %s", result.error().c_str());
    }
    const QString wrong = undescribed(*findStep("resonance"), *result) + unsoundCharts(*result);
    if (!wrong.isEmpty()) {
      qFatal("%s", qPrintable(wrong));
    }
    return *result;
  }
};

inline const std::vector<TrueMode> twoModes{{52.0, 0.05, 0.7}, {83.0, 0.04, 0.25}};

inline CapturePointer sweepOf(const std::vector<TrueMode>& modes, const Shaking& shaking = {}) {
  return captureOf(sweptSignal(modes, shaking), shaking.rate, shaking.seed + 100, shaking.noise);
}

inline Json sweepRow(const char* axis, const char* position, const char* file) {
  return {{"axis", axis},       {"position", position}, {"sweep_from_hz", 5},
          {"sweep_to_hz", 120}, {"sweep_s", 30},        {"capture", {{"file", file}}}};
}

/// A copy of the capture after a change.
inline CapturePointer changed(const CapturePointer& capture, const std::function<void(Capture&)>& change) {
  auto copy = std::make_shared<Capture>(*capture);
  change(*copy);
  return copy;
}

}  // namespace fettle::tests
