#pragma once
#include "ui/forms/cell_view.h"

namespace fettle::ui {

/// A checklist without horizontal scrolling: what to look at is broken over lines where it is long.
class ChecklistView : public CellView {
  Q_OBJECT
 public:
  using CellView::CellView;
  void fitColumns() override;
};

}  // namespace fettle::ui
