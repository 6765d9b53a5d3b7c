#include "ui/forms/intake_dialog.h"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QProgressBar>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>
#include <vector>

#include "core/history/intake_reference.h"
#include "core/intake/sound_file.h"
#include "core/measure/format.h"
#include "ui/forms/column_mapping.h"
#include "ui/forms/field_value.h"
#include "ui/forms/grid_turning.h"
#include "ui/forms/input_form.h"
#include "ui/forms/intake_memory.h"
#include "ui/forms/intake_words.h"
#include "ui/forms/small_editor.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {
namespace {

/// A sound file names its columns itself: nothing is asked about it.
bool isSound(const Field& field, const std::string& bytes) {
  return field.kind == FieldKind::capture && isSoundFile(bytes);
}

}  // namespace

IntakeDialog::IntakeDialog(const Field& field, const QString& name, std::string bytes, QWidget* parent)
    : QDialog(parent),
      m_field(field),
      m_name(name),
      m_bytes(std::make_shared<const std::string>(std::move(bytes))),
      m_check(new IntakeCheck(this)),
      m_formatForm(new InputForm(&makeSmallEditor)),
      m_rows(new QTableWidget),
      m_recognised(new SmallLabel),
      m_status(new QLabel),
      m_problem(new SmallLabel({}, SmallLabel::Tone::fault)),
      m_progress(new QProgressBar),
      m_stop(new QPushButton(tr("&Stop reading"))),
      m_ok(new QPushButton(tr("&Take in"))) {
  setObjectName("intakeDialog");
  setWindowTitle(tr("%1 from %2").arg(QString::fromStdString(field.label), name));
  QWidget* part = nullptr;
  if (field.kind == FieldKind::grid) {
    part = m_grid = new GridTurning(field);
    connect(m_grid, &GridTurning::changed, this, &IntakeDialog::takeChange);
  } else {
    part = m_columns = new ColumnMapping(field);
    connect(m_columns, &ColumnMapping::changed, this, &IntakeDialog::takeChange);
  }
  build(part);
  connect(m_check, &IntakeCheck::finished, this, &IntakeDialog::showOutcome);
  connect(m_check, &IntakeCheck::progressed, this, [this](double done) {
    m_progress->setVisible(true);
    m_stop->setVisible(true);
    m_progress->setValue(static_cast<int>(100 * done));
  });
  connect(m_formatForm, &InputForm::edited, this,
          [this](const QString& key, const Json& value, const QString&) {
            takeFormat(key.toStdString(), value);
          });
  if (const auto preview = previewTable(*m_bytes, wantedColumns(m_field))) {
    m_shape = shapeSignature(preview->format, preview->heads);
    m_mapping = rememberedIntake(m_field, m_shape);
    if (!m_mapping.is_object()) {
      m_mapping = Json::object();  // nothing is remembered of this shape
    }
    m_format = m_mapping.value("format", Json::object());
    if (m_grid != nullptr) {
      m_grid->setRemembered(m_mapping);
    }
  }
  detect();
}

void IntakeDialog::build(QWidget* part) {
  m_formatForm->setFields(formatFields());
  m_formatForm->setObjectName("formatForm");
  m_rows->setObjectName("previewTableWidget");
  m_rows->setAccessibleName(tr("the first rows of the text"));
  m_rows->setEditTriggers(QAbstractItemView::NoEditTriggers);
  m_rows->setSelectionMode(QAbstractItemView::NoSelection);
  m_rows->setTabKeyNavigation(false);
  m_rows->verticalHeader()->setDefaultSectionSize(fontMetrics().height() * 3 / 2);
  m_problem->setObjectName("intakeProblem");
  m_status->setObjectName("intakeStatus");
  m_progress->setObjectName("intakeProgressBar");
  m_progress->setAccessibleName(tr("how much of the text is read"));
  m_stop->setObjectName("stopReadingButton");
  m_ok->setObjectName("takeInButton");
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel);
  buttons->addButton(m_ok, QDialogButtonBox::AcceptRole);
  auto* foot = new QHBoxLayout;
  foot->addWidget(m_progress);
  foot->addWidget(m_stop);
  foot->addWidget(m_status, 1);
  foot->addWidget(buttons);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(18, 18, 18, 18);
  layout->setSpacing(9);
  layout->addWidget(m_formatForm);
  layout->addWidget(m_recognised);
  layout->addWidget(m_rows, 1);
  layout->addWidget(part);
  layout->addWidget(m_problem);
  layout->addLayout(foot);
  resize(720, 620);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(m_stop, &QPushButton::clicked, m_check, &IntakeCheck::cancel);
}

void IntakeDialog::setPositions(const GridValue& grid) {
  if (m_grid != nullptr) {
    m_grid->setPositions(grid);
    detect();
  }
}

/// From the bytes on: how the text is written, its first rows, what its columns may be.
void IntakeDialog::detect() {
  if (isSound(m_field, *m_bytes)) {
    m_formatForm->hide();
    m_columns->hide();
    showSound();
    check();
    return;
  }
  const Json said{{"format", m_format}};
  const auto preview =
      previewTable(*m_bytes, wantedColumns(m_field), columnChoice(m_mapping), formatHints(said));
  if (!preview) {
    m_isAsRecognised = false;
    m_rows->setRowCount(0);
    say(QString::fromStdString(preview.error().sentence));
    return;
  }
  showFormat(preview->format);
  showPreview(*preview);
  if (m_columns != nullptr) {
    m_columns->show(*preview);
  } else {
    const auto text = readGridText(*m_bytes, gridOptions(said));
    if (!text) {
      say(QString::fromStdString(text.error().sentence));
      return;
    }
    m_grid->show(*text);
  }
  check();
}

void IntakeDialog::takeChange() {
  m_isAsRecognised = false;
  check();
}

void IntakeDialog::showFormat(const TextFormat& format) {
  m_formatForm->setValues(formatValues(format));
}

void IntakeDialog::takeFormat(const std::string& key, const Json& value) {
  m_isAsRecognised = false;
  if (value.is_null()) {
    m_format.erase(key);
  } else {
    m_format[key] = value;
  }
  detect();
}

void IntakeDialog::showPreview(const TablePreview& preview) {
  m_recognised->setSentence(recognisedWords(preview));
  QStringList heads, lines;
  for (const ColumnHead& head : preview.heads) {
    // What stands above a grid is a comment, no head of columns.
    const std::string words = m_grid ? "" : head.header + (head.unit.empty() ? "" : "\n" + head.unit);
    heads << (words.empty() ? QString::number(heads.size() + 1) : QString::fromStdString(words));
  }
  std::vector<QStringList> rows;
  for (std::size_t row = 0; row < preview.rows.size(); ++row) {
    lines << QString::number(preview.rowLines[row]);
    QStringList& cells = rows.emplace_back();
    for (const auto& cell : preview.rows[row]) {
      cells << QString::fromStdString(cell);
    }
  }
  showRows(heads, rows);
  m_rows->setVerticalHeaderLabels(lines);
}

void IntakeDialog::showRows(const QStringList& heads, const std::vector<QStringList>& rows) {
  m_rows->clear();
  m_rows->setColumnCount(static_cast<int>(heads.size()));
  m_rows->setRowCount(static_cast<int>(rows.size()));
  for (std::size_t row = 0; row < rows.size(); ++row) {
    for (int column = 0; column < std::min(rows[row].size(), heads.size()); ++column) {
      auto* item = new QTableWidgetItem(rows[row][column]);
      item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
      m_rows->setItem(static_cast<int>(row), column, item);
    }
  }
  m_rows->setHorizontalHeaderLabels(heads);
  m_rows->resizeColumnsToContents();
}

void IntakeDialog::showSound() {
  const auto sound = previewSound(*m_bytes);
  m_rows->setVisible(sound.has_value());
  if (!sound) {
    m_recognised->setSentence(tr("A sound file."));  // what is wrong with it the check says
    return;
  }
  const auto figure = [](double value) { return QString::fromStdString(formatPlain(value)); };
  m_recognised->setSentence(tr("A sound file: %1 samples a second, channels: %2, %3 s long. Its level over "
                               "time is read; loudest is %4 at %5 s, where 1 is the most a file can hold.")
                                .arg(numberText(sound->rate), QString::number(sound->channels),
                                     figure(sound->seconds), figure(sound->loudest),
                                     figure(sound->loudestAt)));
  std::vector<QStringList> rows;
  for (const double level : sound->levels) {
    rows.push_back({figure(static_cast<double>(rows.size()) / sound->rate), figure(level)});
  }
  showRows({tr("time, s"), tr("level")}, rows);
}

Json IntakeDialog::reference() const {
  Json reference{{"file", m_name.toStdString()}};
  if (!m_format.empty()) {
    reference["format"] = m_format;
  }
  if (isSound(m_field, *m_bytes)) {
    // neither columns nor their units to choose
  } else if (m_columns != nullptr) {
    m_columns->describe(reference);
  } else {
    m_grid->describe(reference);
  }
  if (m_outcome.rows > 0) {
    reference["rows"] = m_outcome.rows;
  }
  return reference;
}

void IntakeDialog::check() {
  m_outcome = {};
  m_ok->setEnabled(false);
  const bool asked = m_columns != nullptr && !isSound(m_field, *m_bytes);
  const QStringList missing = asked ? m_columns->missing() : QStringList();
  if (!missing.isEmpty()) {
    m_isAsRecognised = false;
    say(tr("Say which column of the text is %1.").arg(missing.join(", ")));
    return;
  }
  if (m_grid != nullptr && !m_grid->problem().isEmpty()) {
    m_isAsRecognised = false;
    say(m_grid->problem());
    return;
  }
  m_problem->setSentence({});
  m_status->setText(tr("reading…"));
  m_check->start(m_field, reference(), m_bytes);
}

void IntakeDialog::showOutcome(const IntakeOutcome& outcome) {
  m_outcome = outcome;
  if (m_grid != nullptr) {
    m_grid->showResult(outcome.value);
  }
  say(outcome.cancelled ? tr("Reading was stopped; change something to read it again.") : outcome.problem);
  if (m_problem->text().isEmpty()) {
    m_ok->setEnabled(true);
    m_ok->setDefault(true);
    if (m_isAsRecognised) {
      m_ok->setFocus();  // nothing was left to say: Enter takes in
    }
    m_status->setText(m_grid != nullptr ? tr("%1 lines of heights").arg(outcome.rows)
                                        : tr("%1 rows").arg(outcome.rows));
  }
}

void IntakeDialog::say(const QString& problem) {
  m_progress->hide();
  m_stop->hide();
  m_ok->setEnabled(false);
  m_status->clear();
  m_problem->setSentence(problem);
}

void IntakeDialog::accept() {
  if (m_ok->isEnabled()) {
    if (!isSound(m_field, *m_bytes)) {
      rememberIntake(m_field, m_shape, reference());
    }
    QDialog::accept();
  }
}

}  // namespace fettle::ui
