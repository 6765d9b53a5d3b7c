#include "ui/theme/palette.h"

#include <algorithm>
#include <cmath>

namespace fettle::ui {
namespace {

constexpr double readableRatio = 4.5;

double linear(double channel) {
  return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double relativeLuminance(const QColor& colour) {
  return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
         0.0722 * linear(colour.blueF());
}

// Okabe and Ito (2008). Yellow cannot be seen on white nor black on a dark ground: each look leaves one
// out.
const QColor blue("#0072b2"), vermilion("#d55e00"), green("#009e73"), purple("#cc79a7"), orange("#e69f00"),
    skyBlue("#56b4e9"), yellow("#f0e442"), black("#000000");

}  // namespace

const QColor& Palette::series(int hue) const {
  const auto count = static_cast<int>(seriesColours.size());
  return seriesColours[static_cast<std::size_t>((hue % count + count) % count)];
}

const Palette& Palette::light() {
  static const Palette palette{
      .ground = QColor("#f3f2ef"),
      .panel = QColor("#ffffff"),
      .list = QColor("#eceae5"),
      .line = QColor("#d9d6cf"),
      .text = QColor("#22211e"),
      .dim = QColor("#6b6860"),
      .accent = blue,
      .selection = QColor("#dcebf4"),
      .caution = QColor("#8f5f00"),
      .cautionGround = QColor("#fdf1d8"),
      .fault = QColor("#b3470a"),
      .pass = QColor("#00735a"),
      .seriesColours = {blue, vermilion, green, purple, orange, skyBlue, black},
  };
  return palette;
}

const Palette& Palette::dark() {
  static const Palette palette{
      .ground = QColor("#1d1e20"),
      .panel = QColor("#26282b"),
      .list = QColor("#212326"),
      .line = QColor("#3a3d41"),
      .text = QColor("#e8e6e1"),
      .dim = QColor("#a09d95"),
      .accent = skyBlue,
      .selection = QColor("#2d3f4c"),
      .caution = QColor("#f0b84a"),
      .cautionGround = QColor("#3b321d"),
      .fault = QColor("#f08a4b"),
      .pass = QColor("#4fd1a8"),
      .seriesColours = {skyBlue, orange, green, purple, yellow, vermilion, blue},
  };
  return palette;
}

const Palette& Palette::print() {
  static const Palette palette = [] {
    Palette paper = light();
    paper.ground = paper.panel = paper.list = QColor("#ffffff");
    paper.line = QColor("#cfcfcf");
    paper.text = black;
    paper.dim = QColor("#444444");
    paper.dashesByHue = true;
    return paper;
  }();
  return palette;
}

double contrastRatio(const QColor& first, const QColor& second) {
  const auto [darker, lighter] = std::minmax({relativeLuminance(first), relativeLuminance(second)});
  return (lighter + 0.05) / (darker + 0.05);
}

QColor readable(const QColor& colour, const QColor& ground) {
  const QColor white(Qt::white);
  const QColor end = contrastRatio(black, ground) > contrastRatio(white, ground) ? black : white;
  QColor result = colour;
  for (float part = 0; contrastRatio(result, ground) < readableRatio && part < 1; part += 0.05F) {
    result = mixed(colour, end, part);
  }
  return result;
}

QColor mixed(const QColor& from, const QColor& to, float part) {
  const auto between = [part](float a, float b) { return a + part * (b - a); };
  return QColor::fromRgbF(between(from.redF(), to.redF()), between(from.greenF(), to.greenF()),
                          between(from.blueF(), to.blueF()));
}

QColor withOpacity(QColor colour, double opacity) {
  colour.setAlphaF(static_cast<float>(opacity));
  return colour;
}

}  // namespace fettle::ui
