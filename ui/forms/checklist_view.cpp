#include "ui/forms/checklist_view.h"

#include <QHeaderView>
#include <algorithm>

#include "ui/forms/checklist_model.h"

namespace fettle::ui {

void ChecklistView::fitColumns() {
  if (model() == nullptr) {
    return;
  }
  const QFontMetrics metrics(font());
  const int found = std::max(leastWidth(ChecklistModel::answerColumn),
                             metrics.horizontalAdvance(ChecklistModel::tr("✗ not ok")) + 20);
  const int by =
      std::max(leastWidth(ChecklistModel::byColumn), metrics.horizontalAdvance("MMM 00:00") + 20);
  const int rest = std::max(160, viewport()->width() - found - by);
  const int wanted = leastWidth(ChecklistModel::itemColumn);
  const int item = std::clamp(wanted, rest / 2, rest * 2 / 3);
  setColumnWidths({0, 1, 2, 3}, {item, found, rest - item, by});
  const int least = verticalHeader()->defaultSectionSize();
  for (int row = 0; row < model()->rowCount(); ++row) {
    int height = least;
    for (const int column : {ChecklistModel::itemColumn, ChecklistModel::remarkColumn}) {
      const QString text = model()->index(row, column).data().toString();
      const QRect room(0, 0, columnWidth(column) - 17, 1000);  // margins and the line of the grid
      const int lines = metrics.boundingRect(room, Qt::TextWordWrap, text).height();
      height = std::max(height, lines + least - metrics.height());
    }
    setRowHeight(row, height);
  }
  updateGeometry();
}

}  // namespace fettle::ui
