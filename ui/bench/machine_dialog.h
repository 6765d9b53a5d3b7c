#pragma once
#include <QDialog>

#include "core/history/history.h"
#include "core/steps/contract/field.h"
#include "ui/theme/palette.h"

namespace fettle::ui {

class InputForm;
class FindingsPanel;

/// The machine: its sheet, the settings as found, the instruments of the bench, the tolerances. Edits a
/// copy of the record; whoever opened it hands the copy to the document.
class MachineDialog : public QDialog {
  Q_OBJECT
 public:
  MachineDialog(const MachineRecord& machine, const Palette& palette, bool readOnly,
                QWidget* parent = nullptr);
  const MachineRecord& machine() const { return m_machine; }

 protected:
  void accept() override;

 private:
  QWidget* sheetPage(bool readOnly);
  QWidget* foundPage(bool readOnly);
  QWidget* instrumentsPage(bool readOnly);
  QWidget* tolerancesPage(bool readOnly);
  InputForm* addForm(const std::vector<Field>& fields, bool readOnly, class QVBoxLayout& column);
  void check();

  const Palette& m_palette;
  MachineRecord m_machine;
  std::vector<InputForm*> m_forms;
  FindingsPanel* m_findings = nullptr;
};

}  // namespace fettle::ui
