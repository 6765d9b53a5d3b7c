#pragma once
#include <QString>
#include <algorithm>
#include <cmath>

#include "core/steps/contract/step.h"

namespace fettle::tests {

/// What a result holds that its step does not describe, or describes otherwise: quantities by id and unit,
/// texts, settings, verdicts of values that are not judged. Empty when all is described.
inline QString undescribed(const Step& step, const StepResult& result) {
  QString wrong;
  const auto complain = [&](const std::string& id, const char* what) {
    wrong += QString::fromStdString(id) + ' ' + what + "; ";
  };
  for (const auto& value : result.values) {
    const ResultDescription* described = step.describe(value.id);
    if (!described) {
      complain(value.id, "is not described");
    } else if (described->unit != value.unit || described->unit.empty()) {
      complain(value.id, "has another unit than described");
    }
    if (!value.quantity && value.why.empty()) {
      complain(value.id, "has neither value nor reason");
    }
  }
  for (const auto& text : result.texts) {
    const ResultDescription* described = step.describe(text.id);
    if (!described || !described->unit.empty()) {
      complain(text.id, "is not described as a text");
    }
  }
  for (const auto& proposal : result.settings) {
    const bool known = std::any_of(step.settings.begin(), step.settings.end(), [&](const auto& setting) {
      return matchesPattern(proposal.id, setting.id) && setting.unit == proposal.unit;
    });
    if (!known) {
      complain(proposal.id, "is proposed but no setting of the step");
    }
  }
  for (const auto& judged : result.judgements) {
    const ResultDescription* described = step.describe(judged.id);
    if (!described || !described->judged) {
      complain(judged.id, "has a verdict but is not judged");
    }
  }
  return wrong;
}

/// Charts that hold a number that is not finite, or lists of unequal length; empty when all are sound.
inline QString unsoundCharts(const StepResult& result) {
  QString wrong;
  const auto finite = [](const std::vector<double>& values) {
    return std::all_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); });
  };
  for (const auto& chart : result.charts) {
    for (const auto& series : chart.series) {
      const bool paired = series.x.size() == series.y.size() &&
                          (series.yHigh.empty() || series.yHigh.size() == series.x.size());
      if (!paired || !finite(series.x) || !finite(series.y) || !finite(series.yHigh)) {
        wrong += QString::fromStdString(chart.view + ": " + series.name + "; ");
      }
    }
    if (chart.whenEmpty.empty()) {
      wrong += QString::fromStdString(chart.view) + " does not say what to enter; ";
    }
  }
  return wrong;
}

}  // namespace fettle::tests
