#pragma once
#include <QWidget>

#include "core/history/history.h"
#include "core/steps/contract/step.h"
#include "core/steps/contract/wording.h"
#include "ui/theme/look.h"
#include "ui/theme/palette.h"

class QGridLayout;
class QLabel;
class QVBoxLayout;

namespace fettle::ui {

class ResultTableView;

/// The results of a run: proposals with what was found and a button that adopts them, then every value with
/// its uncertainty and verdict, families of values as tables.
class ResultsPanel : public QWidget {
  Q_OBJECT
 public:
  explicit ResultsPanel(const Palette& palette, QWidget* parent = nullptr);

  /// Shows the result of a run, or the sentence that refused its inputs; without a result what to do.
  void show(const Step& step, const StepRun* run, const Evaluated* evaluated, bool editable);

 signals:
  void adoptWanted(const fettle::SettingProposal& proposal);
  void takeBackWanted(const QString& setting);

 private:
  void clear();
  void fill(const Step& step, const StepRun& run, const StepResult& result, bool editable);
  /// The label at a place of the grid: a new one, or while refilling the one that stands there.
  void put(const QString& text, QFont Fonts::*type, const QColor& colour, int column, int columns = 1);
  void endRow();
  /// The setting whose button has the keyboard, and the keyboard back to its button when that was made
  /// anew.
  QString focusedSetting() const;
  void giveBackFocus(const QString& setting);
  void putMissing(const Step& step, const StepResult& result);
  void addProposal(const SettingProposal& proposal, const Wording& wording, const StepRun& run,
                   const StepResult& result, bool editable);
  void addButton(const SettingProposal& proposal, const QString& name, bool adopted, bool editable);
  void addValue(const QString& label, const Step& step, const StepResult& result, const ResultValue& value);
  void addText(const QString& label, const QString& text);
  void addTable(const ResultTable& table, const StepResult& result);

  const Palette& m_palette;
  QVBoxLayout* m_column;
  QWidget* m_content = nullptr;
  QGridLayout* m_grid = nullptr;
  std::string m_shown;     ///< what stands there, so that an equal result is not shown again
  std::string m_skeleton;  ///< which rows stand there, so that only their texts change
  std::vector<SettingProposal> m_proposals;
  std::vector<QLabel*> m_labels;  ///< in the order they were put
  std::vector<ResultTableView*> m_tables;
  bool m_refilling = false;
  std::size_t m_nextLabel = 0, m_nextTable = 0;
  int m_row = 0;
};

}  // namespace fettle::ui
