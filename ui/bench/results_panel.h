#pragma once
#include <QWidget>

#include "core/history/history.h"
#include "core/steps/contract/result_label.h"
#include "core/steps/contract/step.h"
#include "ui/theme/palette.h"

class QGridLayout;
class QVBoxLayout;

namespace fettle::ui {

/// The results of a run: proposals with what was found and a button that adopts them, then every value with
/// its uncertainty and verdict, families of values as tables.
class ResultsPanel : public QWidget {
  Q_OBJECT
 public:
  explicit ResultsPanel(const Palette& palette, QWidget* parent = nullptr);

  /// Shows a result; a null result empties the panel. `problem` is the sentence of refused inputs.
  void show(const Step& step, const StepRun* run, const Evaluated* evaluated, bool editable);

 signals:
  void adoptWanted(const fettle::SettingProposal& proposal);
  void takeBackWanted(const QString& setting);

 private:
  void clear();
  void addSentence(const QString& text, const QColor& colour);
  void addProposal(const SettingProposal& proposal, const Step& step, const StepRun& run,
                   const StepResult& result, bool editable);
  void addValue(const Step& step, const StepResult& result, const ResultValue& value);
  void addTable(const Step& step, const ResultTable& table);

  const Palette& m_palette;
  QVBoxLayout* m_column;
  QWidget* m_content = nullptr;
  QGridLayout* m_grid = nullptr;
  std::string m_shown;  ///< what stands there, so that an equal result is not built again
};

}  // namespace fettle::ui
