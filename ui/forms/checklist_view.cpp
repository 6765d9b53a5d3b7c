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
  const int found = std::max(leastWidth(ChecklistModel::answerColumn, roomy),
                             metrics.horizontalAdvance(ChecklistModel::tr("✗ not ok")) + roomy);
  const int by =
      std::max(leastWidth(ChecklistModel::byColumn, roomy), metrics.horizontalAdvance("MMM 00:00") + roomy);
  const int rest = std::max(160, viewport()->width() - found - by);
  const int wanted = leastWidth(ChecklistModel::itemColumn, roomy);
  const int item = std::clamp(wanted, rest / 2, rest * 2 / 3);
  setColumnWidths({0, 1, 2, 3}, {item, found, rest - item, by});
  fitRowHeights({ChecklistModel::itemColumn, ChecklistModel::remarkColumn});
}

}  // namespace fettle::ui
