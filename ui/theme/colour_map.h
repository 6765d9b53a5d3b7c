#pragma once
#include <QColor>
#include <algorithm>
#include <array>
#include <cmath>

namespace fettle::ui {

/// Evenly spaced colours of a map.
using ColourTable = std::array<QRgb, 256>;

/// The colour of a place on a map, 0 to 1, clamped; transparent for NaN.
inline QRgb colourAt(const ColourTable& table, double part) {
  return std::isnan(part) ? qRgba(0, 0, 0, 0)
                          : table[static_cast<std::size_t>(std::lround(std::clamp(part, 0.0, 1.0) * 255))];
}

/// Cividis (Nuñez, Anderton and Renslow, 2018, PLoS ONE 13(7): e0199239), from dark blue to yellow:
/// perceptually uniform, and the same to people with and without red-green deficiency. Twelve published
/// colours, evenly spaced, from memory; between them a straight line in CIELAB, so that lightness stays as
/// even as theirs.
const ColourTable& heightColours();

/// From blue over white in the middle to orange, for signed differences. The ends are blue and vermilion of
/// Okabe and Ito (2008); straight lines in CIELAB.
const ColourTable& differenceColours();

/// CIE lightness L*, 0 to 100, of an sRGB colour (CIE 15:2004, D65).
double lightness(QRgb colour);

}  // namespace fettle::ui
