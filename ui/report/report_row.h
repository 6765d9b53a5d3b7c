#pragma once
#include <QColor>
#include <QFont>
#include <QString>
#include <vector>

#include "ui/report/page_flow.h"

class QPaintDevice;

namespace fettle::ui {

/// The type of report pages and the size of a point on their device.
struct ReportType {
  explicit ReportType(const QPaintDevice& onDevice);

  /// Length of that many points in the device's unit.
  double points(double count) const { return count * point; }
  /// Width of the widest line of a text.
  double widthOf(const QString& text, const QFont& font) const;
  /// Width of its longest word.
  double longestWord(const QString& text, const QFont& font) const;

  const QPaintDevice* device;
  double point;
  QFont body;       ///< 9 pt
  QFont bold;       ///< 9 pt
  QFont table;      ///< 8.5 pt
  QFont tableHead;  ///< 8.5 pt, bold
  QFont margin;     ///< 8 pt, of the page's head and foot
  QFont headings[4];
};

/// Cell text whose numbers do not part from their units, their uncertainties from the ±, nor words from the
/// glyph before them.
QString keptTogether(const std::string& text);

/// One text of a row.
struct ReportCell {
  QString text;
  double x = 0, width = 0;
  QFont font;
  QColor colour;
  bool atRight = false;
  int boldLetters = 0;  ///< at its beginning
};

struct RowLook {
  double before = 0;              ///< space above the row
  double padding = 0;             ///< inside, above and below
  double left = 0, right = 0;     ///< from where to where ground and rule reach
  QColor ground, bar, rule = {};  ///< behind the row, at its left, below it; not valid: none
  double ruleWidth = 0;
  bool withNext = false;
};

/// Texts side by side as strips, one for each line. Rows of up to twelve lines stay together, in longer
/// ones the first two and the last two lines do.
std::vector<Strip> stripsOfRow(const std::vector<ReportCell>& cells, const RowLook& look,
                               const ReportType& type);

}  // namespace fettle::ui
