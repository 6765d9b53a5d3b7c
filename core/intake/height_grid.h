#pragma once
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "core/intake/text_format.h"

namespace fettle {

/// Heights over a rectangular grid, in mm; x and y rise, z has one row per y and one column per x.
struct HeightGrid {
  std::vector<double> x;
  std::vector<double> y;
  std::vector<std::vector<double>> z;
};

/// A grid of numbers as it stands in the text, before anybody said which way it lies.
struct GridText {
  struct Range {
    double first = 0.0;  ///< of the first row or column of the text
    double last = 0.0;
  };
  std::vector<std::vector<double>> rows;
  std::vector<double> across;  ///< positions in a row above the heights; empty when there is none
  std::vector<double> down;    ///< positions in a column left of the heights; empty when there is none
  std::optional<Range> x;      ///< named in a comment such as "# x 15..285, y 285..15": only a suggestion
  std::optional<Range> y;
};

struct GridOptions {
  /// Positions in the order of the text; falling is allowed. Left empty, those in the text are used.
  std::vector<double> x;
  std::vector<double> y;
  bool useSuggested = false;  ///< else use the ranges named in a comment
  bool columnsFirst = false;  ///< each line of the text is one x
  bool backRowFirst = false;  ///< rising y positions belong to the text from its end
  bool rightToLeft = false;   ///< the same for x
  /// Whether the first row holds positions, and the first column; found out when nothing is said.
  std::optional<bool> firstRowIsPositions;
  std::optional<bool> firstColumnIsPositions;
  FormatHints format;
};

/// Reads a pasted or typed grid. Positions above and left of the heights are recognised by a corner that is
/// empty or a word, by a first row one cell short, or when they run strictly up or down over more than 10
/// mm and over four times the span of the heights. Refuses ragged rows and anything that is no number, with
/// line and column.
Intake<GridText> readGridText(std::string_view bytes, const GridOptions& options = {});

/// Turns a grid so that x and y rise. Refuses grids under 2 × 2, missing positions, wrong counts, and
/// positions that neither rise nor fall throughout.
Intake<HeightGrid> layOutGrid(GridText text, const GridOptions& options);

/// Text to grid in one go.
Intake<HeightGrid> readGrid(std::string_view bytes, const GridOptions& options = {});

/// `count` positions from first to last at equal distances.
std::vector<double> evenPositions(double first, double last, std::size_t count);

}  // namespace fettle
