#include "ui/bench/machine_dialog.h"

#include <QDialogButtonBox>
#include <QPushButton>
#include <QScrollArea>
#include <QTabWidget>
#include <QVBoxLayout>

#include "core/measure/format.h"
#include "core/measure/unit.h"
#include "core/steps/contract/machine_sheet.h"
#include "ui/bench/findings_panel.h"
#include "ui/bench/machine_fields.h"
#include "ui/editing/document.h"
#include "ui/forms/input_form.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {
namespace {

QScrollArea* scrolled(QWidget* content) {
  auto* area = new QScrollArea;
  area->setFrameShape(QFrame::NoFrame);
  area->setWidgetResizable(true);
  area->setWidget(content);
  return area;
}

QVBoxLayout* page(QWidget* body, const QString& words) {
  auto* column = new QVBoxLayout(body);
  column->setContentsMargins(12, 12, 12, 12);
  column->setSpacing(9);
  auto* label = new SmallLabel(words);
  label->setWordWrap(true);
  column->addWidget(label);
  return column;
}

}  // namespace

MachineDialog::MachineDialog(const MachineRecord& machine, const Palette& palette, bool readOnly,
                             QWidget* parent)
    : QDialog(parent), m_palette(palette), m_machine(machine) {
  setObjectName("machineDialog");
  setWindowTitle(tr("Machine"));
  resize(820, 640);
  auto* column = new QVBoxLayout(this);
  auto* tabs = new QTabWidget;
  tabs->setObjectName("machineTabs");
  tabs->addTab(sheetPage(readOnly), tr("Sheet"));
  tabs->addTab(foundPage(readOnly), tr("Settings as found"));
  tabs->addTab(instrumentsPage(readOnly), tr("Instruments"));
  tabs->addTab(tolerancesPage(readOnly), tr("Tolerances"));
  column->addWidget(tabs, 1);
  auto* buttons = new QDialogButtonBox(readOnly ? QDialogButtonBox::Close
                                                : QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  for (auto* button : buttons->findChildren<QPushButton*>()) {
    button->setAutoDefault(false);  // Enter belongs to the fields
  }
  column->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &MachineDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  check();
}

InputForm* MachineDialog::addForm(const std::vector<Field>& fields, bool readOnly, QVBoxLayout& column) {
  auto* form = new InputForm;
  form->setFields(fields);
  form->setReadOnly(readOnly);
  column.addWidget(form);
  m_forms.push_back(form);
  return form;
}

QWidget* MachineDialog::sheetPage(bool readOnly) {
  auto* body = new QWidget;
  auto* column =
      page(body, tr("What is physically there, not what the controller believes. Only the name is needed; "
                    "a step that needs more says so."));
  auto* form = addForm(machineSheetFields(), readOnly, *column);
  form->setObjectName("sheetForm");
  form->setValues(m_machine.sheet);
  m_findings = new FindingsPanel(m_palette);
  m_findings->setMinimumHeight(110);
  column->addWidget(m_findings);
  column->addStretch(1);
  connect(form, &InputForm::edited, this,
          [this, form](const QString& key, const Json& value, const QString&) {
            if (value.is_null()) {
              m_machine.sheet.erase(key.toStdString());
            } else {
              m_machine.sheet[key.toStdString()] = value;
            }
            form->setValues(m_machine.sheet);
            check();
          });
  return scrolled(body);
}

QWidget* MachineDialog::foundPage(bool readOnly) {
  auto* body = new QWidget;
  auto* column =
      page(body, tr("What the controller was delivered with, as read on its screen or in its files."));
  auto* form = addForm(foundFields(), readOnly, *column);
  form->setObjectName("foundForm");
  form->setValues({{"as_found", foundRows(m_machine)}});
  column->addStretch(1);
  connect(form, &InputForm::edited, this, [this, form](const QString&, const Json& rows, const QString&) {
    takeFoundRows(rows, now(), m_machine);
    form->setValues({{"as_found", rows}});
  });
  return scrolled(body);
}

QWidget* MachineDialog::instrumentsPage(bool readOnly) {
  auto* body = new QWidget;
  auto* column = page(
      body, tr("The instruments of this bench. Resolution acts on each reading; the limit of error is "
               "common to all readings of one instrument. A column's instrument is chosen on its step."));
  auto* form = addForm(instrumentFields(), readOnly, *column);
  form->setObjectName("instrumentForm");
  form->setValues({{"instruments_list", instrumentRows(m_machine)}});
  column->addStretch(1);
  connect(form, &InputForm::edited, this, [this, form](const QString&, const Json& rows, const QString&) {
    takeInstrumentRows(rows, m_machine);
    form->setValues({{"instruments_list", rows}});
  });
  return scrolled(body);
}

QWidget* MachineDialog::tolerancesPage(bool readOnly) {
  auto* body = new QWidget;
  auto* column =
      page(body, tr("Between which limits a result passes on this machine. Defaults are common practice "
                    "unless the step text names a source. A blank end is open."));
  auto* form = addForm(toleranceFields(), readOnly, *column);
  form->setObjectName("toleranceForm");
  form->setValues({{"tolerances", toleranceRows(m_machine)}});
  column->addStretch(1);
  connect(form, &InputForm::edited, this, [this, form](const QString&, const Json& rows, const QString&) {
    takeToleranceRows(rows, m_machine);
    form->setValues({{"tolerances", rows}});
  });
  return scrolled(body);
}

void MachineDialog::check() {
  const auto sheet = readMachineSheet(m_machine.sheet);
  if (sheet) {
    m_findings->show(checkMachineSheet(*sheet));
  } else {
    m_findings->show({{"sheet", Severity::fault, sheet.error(), {}}});
  }
}

void MachineDialog::accept() {
  for (auto* form : m_forms) {
    form->commitPending();
  }
  const auto sheet = readMachineSheet(m_machine.sheet);
  const bool named =
      m_machine.sheet.contains("name") && !m_machine.sheet["name"].get<std::string>().empty();
  if (!sheet || !named) {
    m_findings->show({{"sheet",
                       Severity::fault,
                       sheet ? tr("The machine needs a name.").toStdString() : sheet.error(),
                       {}}});
    findChild<QTabWidget*>("machineTabs")->setCurrentIndex(0);
    return;
  }
  QDialog::accept();
}

}  // namespace fettle::ui
