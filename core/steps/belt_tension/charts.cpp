#include "core/steps/belt_tension/charts.h"

#include <algorithm>
#include <cmath>

#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr double lowestShown = 1e-7;  // of the loudest bin; the scale is logarithmic

Chart emptySpectrum() {
  Chart chart;
  chart.view = "spectrum";
  chart.title = Text::tr("Spectrum");
  chart.x = {Text::tr("frequency"), "Hz"};
  chart.y = {Text::tr("density, loudest = 1"), "1", true};
  chart.whenEmpty = Text::tr("Choose a recording of a plucked belt to see its spectrum.");
  return chart;
}

double densityAt(const maths::PowerDensity& density, double frequency) {
  const double bin = density.frequency.at(1);
  const auto index = static_cast<std::size_t>(std::lround(frequency / bin));
  return density.density[std::min(index, density.density.size() - 1)];
}

void markHarmonics(Chart& chart, const HeardPitch& heard, double loudest) {
  Series marks;
  marks.name = Text::tr("harmonics");
  marks.role = SeriesRole::reached;
  for (const auto& harmonic : heard.pitch.harmonics) {
    marks.x.push_back(harmonic.frequency);
    marks.y.push_back(std::max(densityAt(heard.pitch.density, harmonic.frequency) / loudest, lowestShown));
    if (harmonic.order > 1) {
      chart.lines.push_back({say(Text::tr("{0} f"), harmonic.order), harmonic.frequency, true});
    }
  }
  chart.series.push_back(std::move(marks));
  chart.lines.push_back(
      {say(Text::tr("f {0} Hz"), formatFixed(heard.pitch.frequency, 1)), heard.pitch.frequency, true});
}

Chart spectrumOf(const HeardPitch& heard) {
  Chart chart = emptySpectrum();
  const auto& density = heard.pitch.density;
  const double loudest = *std::max_element(density.density.begin(), density.density.end());
  const double upTo = std::max(1.2 * heard.pitch.harmonics.back().frequency, 6 * heard.pitch.frequency);
  chart.about = say(Text::tr("recording {0}, {1}"), heard.row, heard.belt);
  chart.title = say(Text::tr("Spectrum {0}, {1}"), heard.row, heard.belt);
  Series curve;
  curve.name = Text::tr("what rings and dies away");
  curve.role = SeriesRole::trace;
  for (std::size_t k = 1; k < density.density.size() && density.frequency[k] <= upTo; ++k) {
    curve.x.push_back(density.frequency[k]);
    curve.y.push_back(std::max(density.density[k] / loudest, lowestShown));
  }
  chart.series.push_back(std::move(curve));
  markHarmonics(chart, heard, loudest);
  return chart;
}

Chart frequencyChart(const std::vector<BeltReadings>& belts) {
  Chart chart;
  chart.view = "frequencies";
  chart.title = Text::tr("Frequencies");
  chart.x = countedAxis(Text::tr("reading"));
  chart.y = {Text::tr("frequency"), "Hz"};
  chart.whenEmpty = Text::tr("Enter plucks with their frequency, or choose recordings of plucked belts.");
  int hue = 0;
  for (const auto& belt : belts) {
    if (belt.frequencies.empty()) {
      continue;
    }
    Series series;
    series.name = belt.name;
    series.hue = hue++;
    for (const double frequency : belt.frequencies) {
      series.x.push_back(static_cast<double>(series.x.size() + 1));
      series.y.push_back(frequency);
    }
    chart.series.push_back(std::move(series));
  }
  return chart;
}

Chart tensionChart(const TensionPicture& picture) {
  Chart chart;
  chart.view = "tensions";
  chart.title = Text::tr("Tension");
  chart.x = countedAxis(Text::tr("belt"));
  chart.x.names = picture.belts;
  chart.y = {Text::tr("tension"), "N"};
  chart.whenEmpty = Text::tr("Enter span and mass of the belt and its plucks to see how tight it is.");
  Series points;
  points.name = Text::tr("tension");
  std::vector<double> expanded;
  for (const auto& tension : picture.tensions) {
    points.x.push_back(static_cast<double>(points.x.size() + 1));
    points.y.push_back(tension.value);
    expanded.push_back(expandedUncertainty(tension).value_or(0));
  }
  if (!points.x.empty()) {
    addWithUncertainty(chart, std::move(points), expanded);
    chart.bands = picture.wanted;
  }
  return chart;
}

}  // namespace

std::vector<Chart> beltTensionCharts(const TensionPicture& picture, const std::vector<BeltReadings>& belts,
                                     const std::vector<HeardPitch>& heard) {
  std::vector<Chart> charts{tensionChart(picture), frequencyChart(belts)};
  for (const auto& pitch : heard) {
    charts.push_back(spectrumOf(pitch));
  }
  if (heard.empty()) {
    charts.push_back(emptySpectrum());
  }
  return charts;
}

}  // namespace fettle
