#pragma once
#include <QDialog>

#include "core/fields/field.h"
#include "core/history/history.h"
#include "core/steps/contract/finding.h"
#include "ui/theme/palette.h"

class QKeyEvent;
class QVBoxLayout;

namespace fettle::ui {

class InputForm;
class FindingsPanel;

/// The machine: its sheet, the settings as found, the instruments of the bench, the tolerances. Edits a
/// copy of the record; whoever opened it hands the copy to the document. OK is refused while a fault
/// stands, which is shown with its field.
class MachineDialog : public QDialog {
  Q_OBJECT
 public:
  MachineDialog(const MachineRecord& machine, const Palette& palette, bool readOnly,
                QWidget* parent = nullptr);
  const MachineRecord& machine() const { return m_machine; }

 protected:
  void accept() override;
  void reject() override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QWidget* sheetPage(bool readOnly);
  QWidget* foundPage(bool readOnly);
  QWidget* instrumentsPage(bool readOnly);
  QWidget* tolerancesPage(bool readOnly);
  InputForm* addForm(const std::vector<Field>& fields, bool readOnly, QVBoxLayout& column);
  std::vector<Finding> sheetFindings(const Json& sheet) const;
  void check();
  // What stands against OK: each puts the cursor on it and answers whether there was something.
  bool showRefusedText();
  bool showSheetFault();
  bool showFoundProblem();
  void showPageOf(QWidget* place);

  const Palette& m_palette;
  MachineRecord m_machine;
  const MachineRecord m_before;
  std::vector<InputForm*> m_forms;
  InputForm* m_sheet = nullptr;
  InputForm* m_found = nullptr;
  Json m_foundRows;
  class SmallLabel* m_foundProblem = nullptr;
  FindingsPanel* m_findings = nullptr;
  bool m_refused = false;  ///< OK was tried
};

}  // namespace fettle::ui
