#include "ui/charts/surface_image.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fettle::ui {
namespace {

constexpr double notANumber = std::numeric_limits<double>::quiet_NaN();

/// Where a value lies between two neighbours of a rising or falling list.
struct Between {
  std::size_t before = 0;
  double part = 0;
};

Between between(const std::vector<double>& nodes, double value) {
  const bool rises = nodes.front() < nodes.back();
  const auto after = std::partition_point(nodes.begin() + 1, nodes.end() - 1, [&](double node) {
    return rises ? node <= value : node >= value;
  });
  const auto before = static_cast<std::size_t>(after - nodes.begin()) - 1;
  return {before, std::clamp((value - nodes[before]) / (nodes[before + 1] - nodes[before]), 0.0, 1.0)};
}

/// The pixels of one direction.
struct Pixels {
  double from, size;
  int count;

  std::vector<double> middles(const AxisScale& scale) const { return values(scale, 0.5, count); }
  std::vector<double> edges(const AxisScale& scale) const { return values(scale, 0, count + 1); }

 private:
  std::vector<double> values(const AxisScale& scale, double first, int number) const {
    std::vector<double> result;
    result.reserve(static_cast<std::size_t>(number));
    for (int i = 0; i < number; ++i) {
      result.push_back(scale.value(from + (i + first) * size / count));
    }
    return result;
  }
};

using Parts = std::vector<std::vector<double>>;

Parts partsOf(const Surface& surface, const SurfaceColours& colours) {
  Parts parts;
  parts.reserve(surface.z.size());
  for (const auto& row : surface.z) {
    auto& line = parts.emplace_back(row.size());
    std::transform(row.begin(), row.end(), line.begin(), [&](double z) { return colours.part(z); });
  }
  return parts;
}

void fillSmooth(QImage& image, const Surface& surface, const Parts& parts, const SurfaceColours& colours,
                const std::vector<double>& xs, const std::vector<double>& ys) {
  std::vector<Between> columns;
  columns.reserve(xs.size());
  for (const double x : xs) {
    columns.push_back(between(surface.x, x));
  }
  std::vector<double> row(surface.x.size());
  for (std::size_t line = 0; line < ys.size(); ++line) {
    const Between at = between(surface.y, ys[line]);
    for (std::size_t i = 0; i < row.size(); ++i) {
      row[i] = parts[at.before][i] + at.part * (parts[at.before + 1][i] - parts[at.before][i]);
    }
    auto* pixels = reinterpret_cast<QRgb*>(image.scanLine(static_cast<int>(line)));
    for (std::size_t pixel = 0; pixel < columns.size(); ++pixel) {
      const auto [i, part] = columns[pixel];
      pixels[pixel] = colours.colourOfPart(row[i] + part * (row[i + 1] - row[i]));
    }
  }
}

/// How many cells lie wholly before a value, in the order of their edges.
std::size_t cellsBefore(const std::vector<double>& edges, double value) {
  const bool rises = edges.front() < edges.back();
  const auto after = std::partition_point(
      edges.begin() + 1, edges.end(), [&](double edge) { return rises ? edge <= value : edge >= value; });
  return static_cast<std::size_t>(after - edges.begin()) - 1;
}

/// The cells that fall on each pixel, from the first to before the last: at least one.
using PixelCells = std::vector<std::pair<std::size_t, std::size_t>>;

PixelCells cellsOfPixels(const std::vector<double>& edges, const std::vector<double>& pixelEdges) {
  PixelCells cells;
  for (std::size_t i = 0; i + 1 < pixelEdges.size(); ++i) {
    const auto [low, high] =
        std::minmax({cellsBefore(edges, pixelEdges[i]), cellsBefore(edges, pixelEdges[i + 1])});
    const std::size_t first = std::min(low, edges.size() - 2);
    cells.emplace_back(first, std::max(high, first + 1));
  }
  return cells;
}

/// NaN only where all are.
double highest(double a, double b) {
  return std::isnan(a) || b > a ? b : a;
}

void fillCells(QImage& image, const Parts& parts, const SurfaceColours& colours, const PixelCells& columns,
               const PixelCells& rows) {
  std::vector<double> line(parts.front().size());
  for (std::size_t y = 0; y < rows.size(); ++y) {
    std::fill(line.begin(), line.end(), notANumber);
    for (std::size_t j = rows[y].first; j < rows[y].second; ++j) {
      std::transform(line.begin(), line.end(), parts[j].begin(), line.begin(), highest);
    }
    auto* pixels = reinterpret_cast<QRgb*>(image.scanLine(static_cast<int>(y)));
    for (std::size_t x = 0; x < columns.size(); ++x) {
      double part = notANumber;
      for (std::size_t i = columns[x].first; i < columns[x].second; ++i) {
        part = highest(part, line[i]);
      }
      pixels[x] = colours.colourOfPart(part);
    }
  }
}

}  // namespace

SurfaceColours::SurfaceColours(const Surface& surface)
    : m_logarithmic(surface.axis.logarithmic && !surface.difference),
      m_table(surface.difference ? &differenceColours() : &heightColours()) {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (const auto& row : surface.z) {
    for (const double z : row) {
      if (std::isfinite(z) && (z > 0 || !m_logarithmic)) {
        low = std::min(low, z);
        high = std::max(high, z);
      }
    }
  }
  if (low > high) {
    low = high = m_logarithmic ? 1 : 0;
  }
  if (surface.difference) {
    high = std::max(std::abs(low), std::abs(high));
    low = -high;
  }
  if (low == high) {
    const double room = low == 0 ? 1 : std::abs(low) * (m_logarithmic ? 0.5 : 0.05);
    low -= room;
    high += room;
  }
  m_range = {low, high};
  m_from = m_logarithmic ? std::log10(low) : low;
  m_to = m_logarithmic ? std::log10(high) : high;
}

double SurfaceColours::part(double value) const {
  if (!std::isfinite(value) || (m_logarithmic && value <= 0)) {
    return notANumber;
  }
  return ((m_logarithmic ? std::log10(value) : value) - m_from) / (m_to - m_from);
}

QRgb SurfaceColours::colour(double value) const {
  return colourOfPart(part(value));
}

QColor SurfaceColours::contrasting(double value) const {
  return lightness(colour(value)) > 50 ? Qt::black : Qt::white;
}

SurfaceImage surfaceImage(const Chart& chart, const SurfaceColours& colours, const AxisScale& x,
                          const AxisScale& y, double pixelsPerUnit) {
  const Surface& surface = *chart.surface;
  const bool isCells = chart.kind == ChartKind::timeFrequency;
  const std::size_t least = isCells ? 1 : 2;
  if (surface.x.size() < least || surface.y.size() < least) {
    return {};
  }
  const std::vector<double> columns = isCells ? cellEdges(surface.x) : surface.x;
  const std::vector<double> rows = isCells ? cellEdges(surface.y) : surface.y;
  const Range across = placesInView(x, {columns.front(), columns.back()});
  const Range down = placesInView(y, {rows.front(), rows.back()});
  const QRectF area(across.from, down.from, across.size(), down.size());
  if (area.isEmpty()) {
    return {};
  }
  const int width = std::max(1, static_cast<int>(std::lround(area.width() * pixelsPerUnit)));
  const int height = std::max(1, static_cast<int>(std::lround(area.height() * pixelsPerUnit)));
  QImage image(width, height, QImage::Format_ARGB32_Premultiplied);
  const Pixels wide{area.left(), area.width(), width}, high{area.top(), area.height(), height};
  const Parts parts = partsOf(surface, colours);
  if (isCells) {
    fillCells(image, parts, colours, cellsOfPixels(columns, wide.edges(x)),
              cellsOfPixels(rows, high.edges(y)));
  } else {
    fillSmooth(image, surface, parts, colours, wide.middles(x), high.middles(y));
  }
  return {image, area};
}

}  // namespace fettle::ui
