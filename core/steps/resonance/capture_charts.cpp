#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/measure/text.h"
#include "core/steps/resonance/charts.h"

namespace fettle {
namespace {

constexpr std::size_t signalColumns = 300;
constexpr double rowsPerColumn = 0.75;

Axis timeAxis() {
  return {Text::tr("time"), "s"};
}

/// Lowest and highest sample of each of at most `columns` pieces of equal length: every peak stays.
Series envelope(std::span<const double> time, std::span<const double> samples, std::size_t columns) {
  Series series;
  series.role = SeriesRole::band;
  const std::size_t pieces = std::min(columns, samples.size());
  for (std::size_t c = 0; c < pieces; ++c) {
    const std::size_t begin = c * samples.size() / pieces;
    const std::size_t end = (c + 1) * samples.size() / pieces;
    const auto [low, high] = std::minmax_element(samples.begin() + static_cast<std::ptrdiff_t>(begin),
                                                 samples.begin() + static_cast<std::ptrdiff_t>(end));
    series.x.push_back(toDigits(0.5 * (time[begin] + time[end - 1]), 5));
    series.y.push_back(toDigits(*low, 4));
    series.yHigh.push_back(toDigits(*high, 4));
  }
  return series;
}

Chart signalChart(const CaptureAnalysis& capture) {
  Chart chart;
  chart.view = "signal";
  chart.about = capture.label;
  chart.title = say(Text::tr("{0}: signal"), capture.label);
  chart.x = timeAxis();
  chart.y = {Text::tr("acceleration"), "mm/s2"};
  const std::vector<double>& time = capture.row.capture->column("time_s");
  int hue = 0;
  for (const MachineSignal& signal : capture.records) {
    Series series = envelope(time, signal.samples, signalColumns);
    series.name = signal.axis;
    series.hue = hue++;
    chart.series.push_back(std::move(series));
  }
  return chart;
}

/// Neighbouring rows of the picture averaged so that few enough are left.
/// What is lower than the noise floor shows as the floor: colours are for what stands above.
Surface surfaceOf(const maths::TimeFrequencyPicture& picture, double floor) {
  Surface surface;
  surface.axis = {Text::tr("density"), "(mm/s2)2/Hz", true};
  for (const double time : picture.time) {
    surface.x.push_back(toDigits(time, 5));
  }
  const auto rows = picture.frequency.size();
  const auto most = std::max<std::size_t>(
      20, static_cast<std::size_t>(rowsPerColumn * static_cast<double>(picture.time.size())));
  const std::size_t together = (rows + most - 1) / most;
  for (std::size_t row = 0; row + together <= rows; row += together) {
    const auto block =
        picture.density.middleRows(static_cast<Eigen::Index>(row), static_cast<Eigen::Index>(together));
    const Eigen::RowVectorXd mean = block.colwise().mean();
    surface.y.push_back(
        toDigits(0.5 * (picture.frequency[row] + picture.frequency[row + together - 1]), 5));
    std::vector<double>& line = surface.z.emplace_back();
    for (const double value : mean) {
      line.push_back(toDigits(std::max(value, floor), 3));
    }
  }
  return surface;
}

Chart pictureChart(const CaptureAnalysis& capture) {
  Chart chart;
  chart.kind = ChartKind::timeFrequency;
  chart.view = "picture";
  chart.about = capture.label;
  chart.title = say(Text::tr("{0}: time and frequency"), capture.label);
  chart.x = timeAxis();
  chart.y = {Text::tr("frequency"), "Hz"};
  chart.surface = surfaceOf(*capture.picture, capture.floor);
  return chart;
}

/// a·exp(−ζωt)·sin(ω_d t + φ) summed, at a time after the first sample of the fit.
double decayAt(const maths::DampedSinesFit& fit, double time) {
  double sum = fit.offset;
  for (const maths::DampedSine& sine : fit.sines) {
    const double omega = 2 * std::numbers::pi * sine.frequency;
    sum += sine.amplitude * std::exp(-sine.damping * omega * time) *
           std::sin(omega * std::sqrt(1 - sine.damping * sine.damping) * time + sine.phase);
  }
  return sum;
}

Chart decayChart(const CaptureAnalysis& capture) {
  constexpr std::size_t drawnPoints = 400;
  const Decay& decay = *capture.decay;
  Chart chart;
  chart.view = "decay";
  chart.about = capture.label;
  chart.title = say(Text::tr("{0}: decay"), capture.label);
  chart.x = {Text::tr("time after the blow"), "s"};
  chart.y = {Text::tr("acceleration"), "mm/s2"};
  Series measured = envelope(decay.time, decay.samples, drawnPoints);
  measured.name = capture.label;
  Series model;
  model.name = Text::tr("fitted");
  model.role = SeriesRole::model;
  for (const double time : measured.x) {
    model.x.push_back(time);
    model.y.push_back(toDigits(decayAt(decay.fit, time - decay.time.front()), 4));
  }
  chart.series = {std::move(measured), std::move(model)};
  return chart;
}

}  // namespace

double toDigits(double value, int digits) {
  if (value == 0 || !std::isfinite(value)) {
    return 0;
  }
  const int places = digits - 1 - static_cast<int>(std::floor(std::log10(std::abs(value))));
  const double scale = std::pow(10.0, std::abs(places));
  return places > 0 ? std::round(value * scale) / scale : std::round(value / scale) * scale;
}

std::vector<Chart> captureCharts(const CaptureAnalysis& capture) {
  std::vector<Chart> charts;
  if (capture.picture) {
    charts.push_back(pictureChart(capture));
  }
  if (capture.decay) {
    charts.push_back(decayChart(capture));
  }
  charts.push_back(signalChart(capture));
  for (Chart& chart : charts) {
    chart.whenEmpty = addACapture();
  }
  return charts;
}

}  // namespace fettle
