#include "core/steps/bed_shape/results.h"

#include "core/measure/text.h"

namespace fettle {

void BedShapeResults::describe(ResultList& results) {
  results.quantity("flatness_mz", flatnessMinimumZone, Text::tr("Flatness, minimum zone"), "mm")
      .headline()
      .judged();
  results.quantity("flatness_ls", flatnessLeastSquares, Text::tr("Flatness, least squares"), "mm");
  results.quantity("rms", rms, Text::tr("Root mean square from the plane"), "mm");
  results.quantity("range_raw", rangeRaw, Text::tr("Range of the raw heights"), "mm");
  results.quantity("tilt_x", tiltX, Text::tr("Tilt along x"), "mm/100mm");
  results.quantity("tilt_y", tiltY, Text::tr("Tilt along y"), "mm/100mm");
  results.quantity("bow_x", bowX, Text::tr("Bow along x"), "mm");
  results.quantity("bow_y", bowY, Text::tr("Bow along y"), "mm");
  results.quantity("twist", twist, Text::tr("Twist"), "mm");
  results.quantity("edge_drop", edgeDrop, Text::tr("Largest step at an edge"), "mm").judged();
  results.quantity("density_error_mm", densityError, Text::tr("Error between the points of half the grid"),
                   "mm");
  results.quantity("proposed_spacing", proposedSpacing, Text::tr("Grid spacing that is enough"), "mm");
  results.quantity("proposed_columns", proposedColumns, Text::tr("Columns at that spacing"), "1");
  results.quantity("proposed_rows", proposedRows, Text::tr("Rows at that spacing"), "1");
}

}  // namespace fettle
