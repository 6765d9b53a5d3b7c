#pragma once
#include <cstddef>
#include <functional>
#include <vector>

class QPainter;

namespace fettle::ui {

/// A strip of a page that is never cut: a line of text, of a table's row, or a chart. Lengths in one unit.
struct Strip {
  double before = 0;  ///< space above it, not at the top of a page
  double height = 0;
  bool withNext = false;   ///< stands on the page of the strip after it
  bool newPage = false;    ///< begins a page
  std::size_t heads = 0;   ///< strips of a table's head, repeated where this strip begins a page
  std::size_t headAt = 0;  ///< the first of them
  std::function<void(QPainter& painter, double y)> paint;
};

/// Where a strip stands; a head stands in several places.
struct PlacedStrip {
  std::size_t strip = 0;
  int page = 0;  ///< from 0
  double y = 0;  ///< of its top, below its space
};

/// Fills pages of a height from top to bottom. What must stay together goes to the next page when it does
/// not fit; only where it is taller than a page it is parted between strips.
std::vector<PlacedStrip> placedOnPages(const std::vector<Strip>& strips, double pageHeight);

}  // namespace fettle::ui
