#pragma once
#include <QFont>
#include <optional>

#include "ui/theme/palette.h"

class QApplication;

namespace fettle::ui {

/// How the program looks: fixed, or light or dark as the desktop is.
enum class Look { light, dark, desktop };

/// "light", "dark" or "desktop"; none for any other word.
std::optional<Look> lookFromText(const QString& text);

/// Gives the application the Fusion style, the palette, the fonts and a small style sheet.
/// @return the palette in force: the one to hand to charts
const Palette& applyLook(QApplication& application, Look look);

/// Gives all of a running program type of another size, in points.
void setTypeSize(QApplication& application, double basePointSize);

/// The type of the program, all in the desktop's sans with figures of equal width.
struct Fonts {
  QFont base;         ///< 10 pt
  QFont small;        ///< 8.5 pt: labels, charts, what explains
  QFont stepTitle;    ///< 14 pt semibold
  QFont resultValue;  ///< 12 pt semibold
};

/// In proportion to a base size in points, so that a larger base makes everything larger.
Fonts fontsOf(double basePointSize = 10);

}  // namespace fettle::ui
