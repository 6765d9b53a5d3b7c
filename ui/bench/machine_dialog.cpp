#include "ui/bench/machine_dialog.h"

#include <QDialogButtonBox>
#include <QKeyEvent>
#include <QMessageBox>
#include <QScrollArea>
#include <QTabWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/unit.h"
#include "core/steps/contract/machine_sheet.h"
#include "ui/bench/findings_panel.h"
#include "ui/bench/machine_fields.h"
#include "ui/editing/document.h"
#include "ui/forms/any_editor.h"
#include "ui/forms/cell_view.h"
#include "ui/forms/field_editor.h"
#include "ui/forms/field_value.h"
#include "ui/forms/follow_focus.h"
#include "ui/forms/input_form.h"
#include "ui/forms/keys.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {
namespace {

constexpr const char* missing = "missing";  ///< code of a needed field that is blank

/// The fields of the sheet that must not be blank and are.
std::vector<const Field*> blankFields(const Json& sheet) {
  std::vector<const Field*> blank;
  for (const auto& field : machineSheetFields()) {
    if (field.required && isBlank(memberOf(sheet, field.key))) {
      blank.push_back(&field);
    }
  }
  return blank;
}

QScrollArea* scrolled(QWidget* content) {
  auto* area = new QScrollArea;
  area->setFrameShape(QFrame::NoFrame);
  area->setWidgetResizable(true);
  area->setWidget(content);
  new FollowFocus(area);
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
    : QDialog(parent), m_palette(palette), m_machine(machine), m_before(machine) {
  setObjectName("machineDialog");
  setWindowTitle(tr("Machine"));
  resize(820, 720);
  auto* column = new QVBoxLayout(this);
  auto* tabs = new QTabWidget;
  tabs->setObjectName("machineTabs");
  tabs->addTab(sheetPage(readOnly), tr("Sheet"));
  tabs->addTab(foundPage(readOnly), tr("Settings as found"));
  tabs->addTab(instrumentsPage(readOnly), tr("Instruments"));
  tabs->addTab(tolerancesPage(readOnly), tr("Tolerances"));
  column->addWidget(tabs, 1);
  connect(tabs, &QTabWidget::currentChanged, this, [tabs](int page) {
    if (auto* form = tabs->widget(page)->findChild<InputForm*>()) {
      form->focusOnFirst();
    }
  });
  m_findings = new FindingsPanel(m_palette);  // below every page: it says why OK is refused
  m_findings->setFixedHeight(6 * fontMetrics().height());
  column->addWidget(m_findings);
  auto* buttons = new QDialogButtonBox(readOnly ? QDialogButtonBox::Close
                                                : QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  column->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &MachineDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  check();
  m_sheet->focusOn("name");
}

void MachineDialog::keyPressEvent(QKeyEvent* event) {
  // A button with the focus takes Enter itself; anywhere else Enter belongs to the fields.
  if (!isEnter(*event)) {
    QDialog::keyPressEvent(event);
  } else if (event->modifiers() & Qt::ControlModifier) {
    accept();
  }
}

InputForm* MachineDialog::addForm(const std::vector<Field>& fields, bool readOnly, QVBoxLayout& column) {
  auto* form = new InputForm(&makeAnyEditor);
  form->setFields(fields);
  form->setReadOnly(readOnly);
  column.addWidget(form);
  constexpr int rowsOfADialog = 18;  // it is as high as the sheet
  for (auto* table : form->findChildren<CellView*>()) {
    table->setMostRows(rowsOfADialog);
  }
  m_forms.push_back(form);
  return form;
}

QWidget* MachineDialog::sheetPage(bool readOnly) {
  auto* body = new QWidget;
  auto* column =
      page(body, tr("What is physically there, not what the controller believes. Only the name is needed; "
                    "a step that needs more says so."));
  auto* form = addForm(machineSheetFields(), readOnly, *column);
  m_sheet = form;
  form->setObjectName("sheetForm");
  form->setValues(m_machine.sheet);
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
  m_found = form;
  m_foundRows = foundRows(m_machine);
  form->setValues({{"as_found", m_foundRows}});
  m_foundProblem = new SmallLabel({}, SmallLabel::Tone::fault);
  m_foundProblem->setObjectName("foundProblem");
  column->addWidget(m_foundProblem);
  column->addStretch(1);
  connect(form, &InputForm::edited, this, [this, form](const QString&, const Json& rows, const QString&) {
    m_foundRows = rows;
    takeFoundRows(rows, now(), m_machine);
    form->setValues({{"as_found", rows}});
    m_foundProblem->setSentence(QString::fromStdString(foundProblem(rows).sentence));
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

std::vector<Finding> MachineDialog::sheetFindings(const Json& sheet) const {
  const auto read = readMachineSheet(sheet);
  if (!read) {
    return {{"sheet", Severity::fault, read.error(), {}}};
  }
  auto findings = checkMachineSheet(*read);
  for (const Field* field : blankFields(sheet)) {
    findings.insert(findings.begin(),
                    {missing,
                     Severity::fault,
                     tr("%1: an entry is needed.").arg(QString::fromStdString(field->label)).toStdString(),
                     {}});
  }
  const auto motors = checkMotors(*read);
  findings.insert(findings.end(), motors.begin(), motors.end());
  return findings;
}

void MachineDialog::check() {
  auto findings = sheetFindings(m_machine.sheet);
  if (!m_refused) {  // before the first OK a blank entry is no fault yet
    std::erase_if(findings, [](const Finding& finding) { return finding.code == missing; });
  }
  m_findings->show(findings);
}

bool MachineDialog::showRefusedText() {
  FieldEditor* refusing = nullptr;
  for (auto* form : m_forms) {
    FieldEditor* here = form->commitPending();
    refusing = here ? here : refusing;
  }
  if (refusing) {
    showPageOf(refusing);
  }
  return refusing != nullptr;
}

bool MachineDialog::showSheetFault() {
  const auto isFault = [](const Finding& finding) { return finding.severity == Severity::fault; };
  const auto findings = sheetFindings(m_machine.sheet);
  const auto fault = std::find_if(findings.begin(), findings.end(), isFault);
  if (fault == findings.end()) {
    return false;
  }
  const auto blank = blankFields(m_machine.sheet);
  std::string guilty = blank.empty() ? std::string() : blank.front()->key;
  for (const auto& field : machineSheetFields()) {  // the last field without which the fault is gone
    Json without = m_machine.sheet;
    if (without.erase(field.key) > 0) {
      const auto left = sheetFindings(without);
      guilty = std::find(left.begin(), left.end(), *fault) == left.end() ? field.key : guilty;
    }
  }
  showPageOf(m_sheet);
  m_sheet->focusOn(QString::fromStdString(guilty));
  return true;
}

bool MachineDialog::showFoundProblem() {
  const FoundProblem problem = foundProblem(m_foundRows);
  if (problem.sentence.empty()) {
    return false;
  }
  showPageOf(m_found);
  m_found->focusOn(QStringLiteral("as_found[%1].value").arg(problem.row));
  return true;
}

void MachineDialog::showPageOf(QWidget* place) {
  auto* tabs = findChild<QTabWidget*>("machineTabs");
  for (int i = 0; i < tabs->count(); ++i) {
    if (tabs->widget(i)->isAncestorOf(place)) {
      tabs->setCurrentIndex(i);
    }
  }
  place->setFocus();
}

void MachineDialog::reject() {
  for (auto* form : m_forms) {
    form->commitPending();
  }
  const auto discard = [this] {
    return QMessageBox::question(this, windowTitle(), tr("Discard what was entered here?"),
                                 QMessageBox::Discard | QMessageBox::Cancel,
                                 QMessageBox::Cancel) == QMessageBox::Discard;
  };
  if (m_machine == m_before || discard()) {
    QDialog::reject();
  }
}

void MachineDialog::accept() {
  m_refused = true;
  const bool isRefused = showRefusedText();
  check();
  if (!isRefused && !showSheetFault() && !showFoundProblem()) {
    QDialog::accept();
  }
}

}  // namespace fettle::ui
