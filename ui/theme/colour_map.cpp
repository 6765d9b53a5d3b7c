#include "ui/theme/colour_map.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace fettle::ui {
namespace {

constexpr std::array<QRgb, 12> cividisColours{0xff00204d, 0xff00306f, 0xff2a406c, 0xff48526b,
                                              0xff5e626e, 0xff727374, 0xff878479, 0xff9e9677,
                                              0xffb6a971, 0xffd0be67, 0xffead357, 0xffffea46};
constexpr std::array<QRgb, 3> blueWhiteOrange{0xff0072b2, 0xffffffff, 0xffd55e00};

/// CIE 15:2004 with the white point D65.
struct Lab {
  double l, a, b;
};

constexpr double whiteX = 0.95047, whiteZ = 1.08883;

double toLinear(int channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

int fromLinear(double value) {
  const double c = value <= 0.0031308 ? 12.92 * value : 1.055 * std::pow(value, 1 / 2.4) - 0.055;
  return static_cast<int>(std::lround(255 * std::clamp(c, 0.0, 1.0)));
}

double curve(double t) {
  constexpr double delta = 6.0 / 29;
  return t > delta * delta * delta ? std::cbrt(t) : t / (3 * delta * delta) + 4.0 / 29;
}

double inverseCurve(double t) {
  constexpr double delta = 6.0 / 29;
  return t > delta ? t * t * t : 3 * delta * delta * (t - 4.0 / 29);
}

Lab toLab(QRgb colour) {
  const double r = toLinear(qRed(colour)), g = toLinear(qGreen(colour)), b = toLinear(qBlue(colour));
  const double x = curve((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / whiteX);
  const double y = curve(0.2126729 * r + 0.7151522 * g + 0.0721750 * b);
  const double z = curve((0.0193339 * r + 0.1191920 * g + 0.9503041 * b) / whiteZ);
  return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

QRgb fromLab(const Lab& lab) {
  const double middle = (lab.l + 16) / 116;
  const double x = whiteX * inverseCurve(middle + lab.a / 500);
  const double y = inverseCurve(middle);
  const double z = whiteZ * inverseCurve(middle - lab.b / 200);
  return qRgb(fromLinear(3.2404542 * x - 1.5371385 * y - 0.4985314 * z),
              fromLinear(-0.9692660 * x + 1.8760108 * y + 0.0415560 * z),
              fromLinear(0.0556434 * x - 0.2040259 * y + 1.0572252 * z));
}

ColourTable tableThrough(std::span<const QRgb> colours) {
  ColourTable table{};
  for (std::size_t i = 0; i < table.size(); ++i) {
    const double at = static_cast<double>(i * (colours.size() - 1)) / static_cast<double>(table.size() - 1);
    const std::size_t before = std::min(static_cast<std::size_t>(at), colours.size() - 2);
    const double part = at - static_cast<double>(before);
    const Lab from = toLab(colours[before]), to = toLab(colours[before + 1]);
    table[i] = fromLab({from.l + part * (to.l - from.l), from.a + part * (to.a - from.a),
                        from.b + part * (to.b - from.b)});
  }
  return table;
}

}  // namespace

const ColourTable& heightColours() {
  static const ColourTable table = tableThrough(cividisColours);
  return table;
}

const ColourTable& differenceColours() {
  static const ColourTable table = tableThrough(blueWhiteOrange);
  return table;
}

double lightness(QRgb colour) {
  return toLab(colour).l;
}

}  // namespace fettle::ui
