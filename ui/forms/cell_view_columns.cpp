#include <QHeaderView>
#include <functional>
#include <numeric>

#include "ui/forms/cell_view.h"

namespace fettle::ui {
namespace {

constexpr int sampledRows = 100;  ///< enough to see how wide a column is
constexpr int tight = 14;         ///< the margins and the line of the grid
constexpr int headMore = 6;       ///< around a word of the head, which the style insets further

int longestWord(const QFontMetrics& metrics, const QString& text) {
  int width = 0;
  for (const QString& word : text.split(' ')) {
    width = std::max(width, metrics.horizontalAdvance(word));
  }
  return width;
}

/// Gives every column what it can do without, and of the room that is left as much as it lacks.
void share(std::vector<int>& widths, const std::vector<int>& least, int room) {
  const auto sum = [](const std::vector<int>& all) { return std::accumulate(all.begin(), all.end(), 0); };
  const int left = std::max(0, room - sum(least));
  const int lacking = std::max(1, sum(widths) - sum(least));
  for (std::size_t i = 0; i < widths.size(); ++i) {
    widths[i] = least[i] + std::max(0, widths[i] - least[i]) * left / lacking;
  }
}

}  // namespace

int CellView::leastWidth(int column, int padding) const {
  const QFontMetrics head(horizontalHeader()->font()), body(font());
  QString longest;  // by count: measuring every text would be seen as a delay in large tables
  for (int row = 0; row < std::min(model()->rowCount(), sampledRows); ++row) {
    const QString text = model()->index(row, column).data().toString();
    longest = text.size() > longest.size() ? text : longest;
  }
  const QString caption = model()->headerData(column, Qt::Horizontal).toString();
  const int width = std::max(longestWord(head, caption) + headMore, body.horizontalAdvance(longest));
  return std::clamp(width + padding, leastColumn, 320);
}

void CellView::fitColumns() {
  if (model() == nullptr) {
    return;
  }
  std::vector<int> shown, widths;
  const int room = viewport()->width();
  const auto measure = [&](int padding) {
    widths.clear();
    for (const int column : shown) {
      widths.push_back(leastWidth(column, padding));
    }
    return std::accumulate(widths.begin(), widths.end(), 0);
  };
  for (int c = 0; c < model()->columnCount(); ++c) {
    if (!isColumnHidden(c)) {
      shown.push_back(c);
    }
  }
  const bool fits = measure(roomy) <= room || measure(tight) <= room;
  std::vector<int> least;
  for (std::size_t i = 0; !fits && model()->rowCount() <= sampledRows && i < shown.size(); ++i) {
    least.push_back(leastBroken(shown[i]));
  }
  // Where not even that would fit the table scrolls sideways, and rows of one line are read best.
  const bool breaks = !least.empty() && std::accumulate(least.begin(), least.end(), 0) <= room;
  if (breaks) {
    share(widths, least, room);
  }
  int spare = std::max(0, std::accumulate(widths.begin(), widths.end(), room, std::minus<>()));
  for (std::size_t i = 0; i < shown.size(); ++i) {
    const int share = spare / static_cast<int>(shown.size() - i);
    spare -= share;
    widths[i] += share;
  }
  setColumnWidths(shown, widths);
  fitRowHeights(breaks ? shown : std::vector<int>());
}

int CellView::leastBroken(int column) const {
  const QFontMetrics head(horizontalHeader()->font()), body(font());
  int width = longestWord(head, model()->headerData(column, Qt::Horizontal).toString()) + headMore;
  for (int row = 0; row < model()->rowCount(); ++row) {
    width = std::max(width, longestWord(body, model()->index(row, column).data().toString()));
  }
  return std::max(width + tight, leastColumn);
}

void CellView::fitRowHeights(const std::vector<int>& columns) {
  const QFontMetrics metrics(font());
  const int least = verticalHeader()->defaultSectionSize();
  if (columns.empty() && verticalHeader()->length() == least * model()->rowCount()) {
    return;
  }
  for (int row = 0; row < model()->rowCount(); ++row) {
    int height = least;
    for (const int column : columns) {
      const QString text = model()->index(row, column).data().toString();
      const int width = columnWidth(column) - tight;
      if (metrics.horizontalAdvance(text) > width) {
        const int lines = metrics.boundingRect(QRect(0, 0, width, 1000), Qt::TextWordWrap, text).height();
        height = std::max(height, lines + least - metrics.height());
      }
    }
    setRowHeight(row, height);
  }
  updateGeometry();
}

void CellView::setColumnWidths(const std::vector<int>& columns, const std::vector<int>& widths) {
  const QFontMetrics head(horizontalHeader()->font());
  int headHeight = head.height();
  for (std::size_t i = 0; i < columns.size(); ++i) {
    setColumnWidth(columns[i], widths[i]);
    const QString caption = model()->headerData(columns[i], Qt::Horizontal).toString();
    const QRect room(0, 0, widths[i] - tight, 1000);
    headHeight = std::max(headHeight, head.boundingRect(room, Qt::TextWordWrap, caption).height());
  }
  horizontalHeader()->setDefaultAlignment(Qt::AlignVCenter | static_cast<Qt::Alignment>(Qt::TextWordWrap));
  horizontalHeader()->setFixedHeight(headHeight + 8);
  updateGeometry();
}

}  // namespace fettle::ui
