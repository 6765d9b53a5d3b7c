#pragma once
#include <QString>
#include <algorithm>
#include <limits>
#include <string>

#include "core/steps/contract/shared_inputs.h"
#include "core/steps/contract/step.h"

namespace fettle::tests {

/// Files for steps that are given none.
class NoFiles : public InputFiles {
 public:
  tl::expected<CapturePointer, std::string> capture(const Json&, const Field&) override {
    return refusal();
  }
  tl::expected<Json, std::string> table(const Json&, const Field&) override { return refusal(); }
  tl::expected<Json, std::string> grid(const Json&, const Field&) override { return refusal(); }

 private:
  static tl::unexpected<std::string> refusal() {
    return tl::unexpected<std::string>("There are no files in this test.");
  }
};

inline tl::expected<StepResult, std::string> evaluateJson(const Step& step, const Json& inputs,
                                                          const StepContext& context = {}) {
  NoFiles files;
  return step.evaluate(inputs, context, files);
}

/// The result of inputs that must not be refused; ends the program with the sentence if they are.
inline StepResult evaluatedOrEnd(const Step& step, const Json& inputs, const StepContext& context = {}) {
  const auto result = evaluateJson(step, inputs, context);
  if (!result) {
    qFatal("refused: %s", result.error().c_str());
  }
  return *result;
}

/// The value of a quantity; no number when it was not given, which no comparison passes.
inline double valueOf(const StepResult& result, const std::string& id) {
  const Quantity* quantity = result.quantity(id);
  return quantity ? quantity->value : std::numeric_limits<double>::quiet_NaN();
}

/// The verdict on a quantity; none when it was not judged.
inline Verdict verdictOf(const StepResult& result, const std::string& id) {
  const Judged* judged = result.judgement(id);
  return judged ? judged->verdict : Verdict::none;
}

/// The sentence with which inputs, or the first part of them, were refused; empty when they were accepted.
inline QString refusalOf(const Step& step, const Json& inputs, const StepContext& context = {}) {
  const auto result = evaluateJson(step, inputs, context);
  if (!result) {
    return QString::fromStdString(result.error());
  }
  const auto refused = std::find_if(result->findings.begin(), result->findings.end(),
                                    [](const Finding& finding) { return finding.code == "refused"; });
  return refused == result->findings.end() ? QString() : QString::fromStdString(refused->text);
}

/// A context with the default instruments of a step, for calling its evaluate() directly.
inline StepContext benchContext(const Step& step, StepContext context = {}) {
  Json none = Json::object();
  (void)takeSharedInputs(step.fields, none, context);
  return context;
}

inline const Finding* findingOf(const StepResult& result, const std::string& code) {
  const auto found = std::find_if(result.findings.begin(), result.findings.end(),
                                  [&](const Finding& finding) { return finding.code == code; });
  return found == result.findings.end() ? nullptr : &*found;
}

/// How often a result says something.
inline int countOf(const StepResult& result, const std::string& code) {
  return static_cast<int>(std::count_if(result.findings.begin(), result.findings.end(),
                                        [&](const Finding& finding) { return finding.code == code; }));
}

/// The first chart of that view, of an axis, heater or capture where one is named.
inline const Chart* chartOf(const StepResult& result, const std::string& view,
                            const std::string& about = {}) {
  const auto found = std::find_if(result.charts.begin(), result.charts.end(), [&](const Chart& chart) {
    return chart.view == view && (about.empty() || chart.about == about);
  });
  return found == result.charts.end() ? nullptr : &*found;
}

}  // namespace fettle::tests
