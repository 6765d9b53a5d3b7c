#include "core/steps/mechanics/diagonals.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/maths/descriptive.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/contract/reading_findings.h"
#include "core/steps/contract/result_name.h"
#include "core/steps/contract/step.h"
#include "core/steps/mechanics/results.h"

namespace fettle {
namespace {

constexpr double limitPer500 = 1, reference = 500;  // mm; common practice, no source

std::string pathOf(std::size_t row) {
  return fmt::format("diagonals[{}]", row);
}

void refuseImpossible(const FaceDiagonals& row) {
  const double shorter = std::min(*row.p, *row.q);
  if (shorter <= *row.length) {
    throw Refusal{
        say(Text::tr("Diagonals, row {0}: the diagonal of {1} mm is not longer than the edge of {2} "
                     "mm; a diagonal is longer than either edge."),
            row.number, formatNumber(shorter), formatNumber(*row.length)),
        pathOf(row.number)};
  }
}

/// The face of rows that name it. Throws Refusal.
MeasuredFace measuredFace(const std::string& id, const std::vector<FaceDiagonals>& rows) {
  MeasuredFace face{id, rows.front().face, *rows.front().length, {}, {}};
  for (const auto& row : rows) {
    refuseImpossible(row);
    if (face.length != *row.length) {
      throw Refusal{
          say(Text::tr("Diagonals, row {0}: {1} has an edge of {2} mm here and of {3} mm before; one "
                       "face needs one."),
              row.number, row.face, formatNumber(*row.length), formatNumber(face.length)),
          pathOf(row.number)};
    }
    face.differences.push_back(*row.p - *row.q);
    face.rows.push_back(row.number);
  }
  return face;
}

Quantity differenceOf(const MeasuredFace& face, const StepContext& context) {
  const Instrument& p = context.instrument("p_mm");
  const Instrument& q = context.instrument("q_mm");
  const auto n = static_cast<double>(face.differences.size());
  std::vector<Contribution> parts{{std::hypot(p.r, q.r) / std::sqrt(12 * n)}};
  if (p != q) {
    parts.push_back(
        {std::hypot(p.limitOfError(face.length), q.limitOfError(face.length)) / std::sqrt(3.0)});
  }
  if (face.differences.size() > 1) {
    parts.push_back({maths::sampleStandardDeviation(face.differences) / std::sqrt(n), n - 1});
  }
  return combinedQuantity(maths::mean(face.differences), "mm", parts);
}

void judgeFace(StepResult& result, const MeasuredFace& face, const ResultId& id, const Quantity& difference,
               const Instrument& rule) {
  const double limit = limitPer500 * face.length / reference;
  const Judgement judgement = judge(difference, {-limit, limit});
  result.judge(id, judgement, {-limit, limit});
  if (judgement.tooCoarse) {
    result.addFinding("instrument-too-coarse", Severity::caution,
                      tooCoarseSentence(face.name, "mm", judgement, 2 * limit, &rule));
  }
  if (std::abs(difference.value) > limit) {
    result.addFinding(
        "out-of-square", Severity::caution,
        say(Text::tr("{0}: the diagonals differ by {1} mm, {2} mm over {3} mm are allowed. Loosen the "
                     "corners, square the face and tighten crosswise."),
            face.name, formatFixed(std::abs(difference.value), 2), formatFixed(limit, 2),
            formatFixed(face.length, 0)),
        {}, pathOf(face.rows.front()));
  }
}

}  // namespace

std::vector<MeasuredFace> facesOf(StepResult& result, const std::vector<FaceDiagonals>& diagonals) {
  std::vector<std::pair<std::string, std::vector<FaceDiagonals>>> named;
  for (const auto& row : included(diagonals)) {
    const std::string id = resultName(row.face);
    auto rows =
        std::find_if(named.begin(), named.end(), [&](const auto& face) { return face.first == id; });
    if (rows == named.end()) {
      rows = named.insert(named.end(), {id, {}});
    }
    rows->second.push_back(row);
  }
  const auto& key = keysOf<MechanicsResults>();
  std::vector<MeasuredFace> faces;
  for (const auto& [id, rows] : named) {
    result.attempt({key.difference(Name(id, rows.front().face))},
                   [&] { faces.push_back(measuredFace(id, rows)); });
  }
  return faces;
}

void giveDiagonals(StepResult& result, const std::vector<MeasuredFace>& faces, const StepContext& context) {
  const auto& key = keysOf<MechanicsResults>();
  for (const auto& face : faces) {
    const ResultId id = key.difference(Name(face.id, face.name));
    const Quantity difference = differenceOf(face, context);
    result.give(id, difference);
    const Instrument& rule = context.instrument("p_mm");
    noteOutliers(result, face.differences, face.rows, rule.r * std::numbers::sqrt2,
                 say(Text::tr("the difference on {0},"), face.name), "mm");
    if (!context.changedTolerance("mechanics." + id.id)) {
      judgeFace(result, face, id, difference, rule);
    }
  }
}

Chart diagonalsChart(const std::vector<MeasuredFace>& faces, const StepContext& context) {
  Chart chart;
  chart.view = "diagonals";
  chart.title = Text::tr("Diagonals");
  chart.x = countedAxis(Text::tr("face"));
  chart.y = {Text::tr("difference of the diagonals per 500 mm"), "mm"};
  chart.whenEmpty = Text::tr("Enter the two diagonals and the longer edge of each face of the frame.");
  if (faces.empty()) {
    return chart;
  }
  Series readings, means;
  readings.name = Text::tr("readings");
  means.name = Text::tr("mean");
  means.role = SeriesRole::reached;
  std::vector<double> expanded;
  for (const auto& face : faces) {
    const double per500 = reference / face.length;
    const Quantity difference = differenceOf(face, context);
    chart.x.names.push_back(face.name);
    means.x.push_back(static_cast<double>(chart.x.names.size()));
    means.y.push_back(difference.value * per500);
    expanded.push_back(expandedUncertainty(difference).value_or(0) * per500);
    for (const double reading : face.differences) {
      readings.x.push_back(means.x.back());
      readings.y.push_back(reading * per500);
    }
  }
  chart.series.push_back(std::move(readings));
  addWithUncertainty(chart, std::move(means), expanded);
  if (!context.changedTolerance("mechanics.<face>.diagonal_difference")) {  // else no limit per length
    for (const double limit : {limitPer500, -limitPer500}) {
      chart.lines.push_back({say(Text::tr("limit {0} mm per 500 mm"), formatNumber(limit)), limit, false});
    }
  }
  return chart;
}

}  // namespace fettle
