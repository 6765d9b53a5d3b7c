#pragma once
#include <QColor>
#include <vector>

namespace fettle::ui {

/// Colours by meaning. No other file names a colour.
struct Palette {
  QColor ground;         ///< behind everything
  QColor panel;          ///< fields, tables, charts
  QColor list;           ///< the step list
  QColor line;           ///< one-pixel lines and chart grids
  QColor text;           ///< words and figures
  QColor dim;            ///< what explains; labels
  QColor accent;         ///< what can be pressed or is chosen
  QColor selection;      ///< behind a chosen row: other words than text pass through readable() on it
  QColor caution;        ///< words of a caution
  QColor cautionGround;  ///< behind a caution
  QColor fault;          ///< faults and limits
  QColor pass;           ///< what is in order
  std::vector<QColor> seriesColours;
  bool dashesByHue = false;  ///< lines of different hues also differ in dashes: for black-and-white print

  /// Colour of a chart series, repeating after the last one; Okabe and Ito (2008), "Color universal
  /// design".
  const QColor& series(int hue) const;

  static const Palette& light();
  static const Palette& dark();
  /// Black on white, for the report and for exported pictures.
  static const Palette& print();
};

/// Contrast ratio of two colours, 1 to 21 (WCAG 2.1, "contrast ratio", from relative luminances).
double contrastRatio(const QColor& first, const QColor& second);

/// The colour itself, or as much darker or lighter as text on `ground` needs for a ratio of 4.5
/// (WCAG 2.1, success criterion 1.4.3).
QColor readable(const QColor& colour, const QColor& ground);

/// The colour between two, `part` from 0 to 1 of the way.
QColor mixed(const QColor& from, const QColor& to, float part);

/// The colour with an opacity from 0 to 1.
QColor withOpacity(QColor colour, double opacity);

}  // namespace fettle::ui
