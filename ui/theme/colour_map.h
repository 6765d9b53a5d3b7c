#pragma once
#include <QColor>

namespace fettle::ui {

/// Colour of a height or density, t from 0 (dark blue) to 1 (yellow), clamped; transparent for NaN.
/// Cividis (Nuñez, Anderton and Renslow, 2018, PLoS ONE 13(7): e0199239): perceptually uniform, and the
/// same to people with and without red-green deficiency. Twelve published colours, evenly spaced, from
/// memory; between them a straight line in CIELAB, so that lightness stays as even as theirs.
QRgb heightColour(double t);

/// Colour of a signed difference, t from -1 (blue) over 0 (white) to 1 (orange), clamped; transparent for
/// NaN. Ends are blue and vermilion of Okabe and Ito (2008); straight lines in CIELAB.
QRgb differenceColour(double t);

/// CIE lightness L*, 0 to 100, of an sRGB colour (CIE 15:2004, D65).
double lightness(QRgb colour);

}  // namespace fettle::ui
