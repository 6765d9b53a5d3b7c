#include "ui/forms/flow_layout.h"

#include <QWidget>
#include <algorithm>

namespace fettle::ui {

FlowLayout::FlowLayout(int cellWidth, QWidget* parent) : QLayout(parent), m_cellWidth(cellWidth) {
  setContentsMargins(0, 0, 0, 0);
  setSpacing(9);
}

FlowLayout::~FlowLayout() = default;

void FlowLayout::addItem(QLayoutItem* item) {
  m_items.emplace_back(item);
}

int FlowLayout::count() const {
  return static_cast<int>(m_items.size());
}

QLayoutItem* FlowLayout::itemAt(int index) const {
  return index >= 0 && index < count() ? m_items[static_cast<std::size_t>(index)].get() : nullptr;
}

QLayoutItem* FlowLayout::takeAt(int index) {
  if (itemAt(index) == nullptr) {
    return nullptr;
  }
  const auto at = m_items.begin() + index;
  QLayoutItem* item = at->release();
  m_items.erase(at);
  return item;
}

int FlowLayout::widthOf(const QLayoutItem& item, int whole) const {
  const int wanted = std::max(item.sizeHint().width(), item.minimumSize().width());
  if (m_cellWidth == 0) {
    return std::min(wanted, whole);
  }
  const int columns = std::max(1, (whole + spacing()) / (m_cellWidth + spacing()));
  const int cell = (whole + spacing()) / columns - spacing();
  const int step = cell + spacing();
  const int span = std::clamp((wanted + spacing() + step - 1) / step, 1, columns);
  return span * step - spacing();
}

std::vector<FlowLayout::Place> FlowLayout::places(const QRect& rect) const {
  std::vector<Place> placed;
  int x = rect.x(), y = rect.y(), lineHeight = 0;
  for (const auto& item : m_items) {
    if (item->isEmpty()) {
      continue;
    }
    const int width = widthOf(*item, rect.width());
    if (x > rect.x() && x + width > rect.x() + rect.width()) {
      x = rect.x();
      y += lineHeight + spacing();
      lineHeight = 0;
    }
    const int height = item->sizeHint().height();
    placed.push_back({item.get(), QRect(x, y, width, height)});
    x += width + spacing();
    lineHeight = std::max(lineHeight, height);
  }
  return placed;
}

int FlowLayout::heightForWidth(int width) const {
  int bottom = 0;
  for (const auto& place : places(QRect(0, 0, width, 0))) {
    bottom = std::max(bottom, place.rect.y() + place.rect.height());
  }
  return bottom;
}

QSize FlowLayout::minimumSize() const {
  QSize size;
  for (const auto& item : m_items) {
    if (!item->isEmpty()) {
      size = size.expandedTo(item->minimumSize());
    }
  }
  return size;
}

void FlowLayout::setGeometry(const QRect& rect) {
  QLayout::setGeometry(rect);
  for (const auto& place : places(rect)) {
    place.item->setGeometry(place.rect);
  }
}

}  // namespace fettle::ui
