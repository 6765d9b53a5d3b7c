#include "core/steps/mechanics/drag.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/maths/descriptive.h"
#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/uncertainty.h"
#include "core/steps/mechanics/results.h"

namespace fettle {
namespace {

constexpr std::size_t wantedPlaces = 5;

Quantity meanForce(const AxisDrag& drag, const Instrument& scale) {
  const double mean = maths::mean(drag.forces);
  const auto n = static_cast<double>(drag.forces.size());
  double squares = 0;
  for (const double count : drag.counts) {
    squares += scale.r * scale.r / (12 * count);
  }
  const Contribution parts[] = {{std::sqrt(squares) / n}, {scale.limitOfError(mean) / std::sqrt(3.0)}};
  return combinedQuantity(mean, "N", parts);
}

Quantity spreadOf(const AxisDrag& drag, const Quantity& mean, const Instrument& scale) {
  const auto [lowest, highest] = std::minmax_element(drag.forces.begin(), drag.forces.end());
  const auto countOf = [&](auto at) {
    return drag.counts[static_cast<std::size_t>(at - drag.forces.begin())];
  };
  const double spread = (*highest - *lowest) / mean.value;
  const Contribution parts[] = {
      {scale.r * std::sqrt((1 / countOf(lowest) + 1 / countOf(highest)) / 12) / mean.value},
      {spread * *mean.u / mean.value},
  };
  return combinedQuantity(spread, "1", parts);
}

void noteBinding(StepResult& result, const AxisDrag& drag, double spread, const Tolerance& allowed) {
  if (!allowed.high || spread <= *allowed.high) {
    return;
  }
  const auto [lowest, highest] = std::minmax_element(drag.forces.begin(), drag.forces.end());
  const auto indexOf = [&](auto at) { return static_cast<std::size_t>(at - drag.forces.begin()); };
  const auto place = [&](auto at) { return drag.places[indexOf(at)]; };
  result.addFinding(
      "binding", Severity::caution,
      say(Text::tr("Axis {0} binds: {1} N at {2}, {3} N at {4}, {5} % of the mean apart. Look there for "
                   "rails out of parallel, a bent screw, tight wheels or a rubbing cable."),
          drag.axis, formatPlain(*highest), place(highest), formatPlain(*lowest), place(lowest),
          formatFixed(100 * spread, 0)),
      {}, fmt::format("drag[{}]", drag.rows[indexOf(highest)]));
}

}  // namespace

std::vector<AxisDrag> dragOf(const std::vector<DragReading>& readings) {
  std::vector<AxisDrag> axes;
  for (const auto& reading : included(readings)) {
    auto axis =
        std::find_if(axes.begin(), axes.end(), [&](const AxisDrag& a) { return a.axis == reading.axis; });
    if (axis == axes.end()) {
      axis = axes.insert(axes.end(), AxisDrag{reading.axis, {}, {}, {}, {}});
    }
    const auto found = std::find(axis->places.begin(), axis->places.end(), reading.position);
    const auto index = static_cast<std::size_t>(found - axis->places.begin());
    if (found == axis->places.end()) {
      axis->places.push_back(reading.position);
      axis->forces.push_back(*reading.force);
      axis->counts.push_back(1);
      axis->rows.push_back(reading.number);
    } else {
      double& force = axis->forces[index];
      double& count = axis->counts[index];
      count += 1;
      force += (*reading.force - force) / count;
    }
  }
  return axes;
}

void giveDrag(StepResult& result, const AxisDrag& drag, const StepContext& context,
              const Tolerance& allowed) {
  const Instrument& scale = context.instrument("force_N");
  const Quantity mean = meanForce(drag, scale);
  const auto& key = keysOf<MechanicsResults>();
  const ResultId id = key.dragSpread(drag.axis);
  result.give(key.drag(drag.axis), mean);
  if (drag.forces.size() < 2 || mean.value <= 0) {
    result.withhold(id, drag.forces.size() < 2
                            ? Text::tr("one place shows no binding")
                            : Text::tr("the mean force is zero; a finer scale is needed"));
    return;
  }
  const Quantity spread = spreadOf(drag, mean, scale);
  result.give(id, spread);
  noteBinding(result, drag, spread.value, allowed);
  if (drag.forces.size() < wantedPlaces) {
    result.addFinding("few-places", Severity::note,
                      say(Text::tr("Axis {0} was pulled at {1} places; {2} along the travel are wanted."),
                          drag.axis, drag.forces.size(), wantedPlaces));
  }
}

Chart dragChart(const std::vector<AxisDrag>& axes) {
  Chart chart;
  chart.view = "drag";
  chart.title = Text::tr("Drag");
  chart.x = countedAxis(Text::tr("place"));
  chart.y = {Text::tr("force"), "N"};
  chart.whenEmpty =
      Text::tr("Enter the force that moves each axis by hand at five places along its travel.");
  for (const auto& drag : axes) {
    Series series;
    series.name = say(Text::tr("axis {0}"), drag.axis);
    series.hue = static_cast<int>(chart.series.size());
    series.y = drag.forces;
    series.x.resize(drag.forces.size());
    std::iota(series.x.begin(), series.x.end(), 1.0);
    chart.series.push_back(std::move(series));
  }
  return chart;
}

}  // namespace fettle
