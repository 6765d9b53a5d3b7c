#pragma once
#include <QFrame>
#include <vector>

#include "core/steps/contract/finding.h"
#include "ui/theme/palette.h"

class QPushButton;
class QVBoxLayout;

namespace fettle {
struct Step;
}

namespace fettle::ui {

class SmallLabel;

/// What was noticed, one line a finding, with a button that leads to the step it names.
class FindingsPanel : public QFrame {
  Q_OBJECT
 public:
  explicit FindingsPanel(const Palette& palette, QWidget* parent = nullptr);
  /// @param evaluated whether all needed was entered: only then none means that nothing was noticed
  void show(const std::vector<Finding>& findings, bool evaluated = true);
  /// Pixels that show everything without scrolling.
  int heightFor(int width) const;

 signals:
  void stepWanted(const QString& step);

 private:
  /// Leads to the step that a finding names.
  QPushButton* wayTo(const Step& step);

  const Palette& m_palette;
  SmallLabel* m_title;
  QVBoxLayout* m_column;
  QWidget* m_content = nullptr;
  std::vector<Finding> m_shown;
  bool m_isComplete = false;
};

}  // namespace fettle::ui
