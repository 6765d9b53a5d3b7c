#include "ui/bench/results_panel.h"

#include <QGridLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"
#include "core/steps/contract/result_label.h"
#include "ui/forms/small_label.h"
#include "ui/theme/look.h"

namespace fettle::ui {
namespace {

QString shown(const SettingValue& value) {
  return QString::fromStdString(value.number ? formatNumber(*value.number) : value.text);
}

QString withUnit(const QString& value, const std::string& unit) {
  const QString shownUnit = QString::fromStdString(displayUnit(unit));
  return shownUnit.isEmpty() || value.isEmpty() ? value : value + " " + shownUnit;
}

Quantity quantityOf(const SettingProposal& proposal, const StepResult& result) {
  if (const Quantity* same = result.quantity(proposal.id)) {
    return *same;
  }
  Quantity quantity = plainQuantity(*proposal.proposed.number, proposal.unit);
  quantity.u = proposal.u;
  return quantity;
}

const Adoption* adoptionOf(const StepRun& run, const std::string& setting) {
  for (const auto& adoption : run.adopted) {
    if (adoption.setting == setting) {
      return &adoption;
    }
  }
  return nullptr;
}

QLabel* label(const QString& text, const QFont& font, const QColor& colour) {
  auto* made = new QLabel(text);
  made->setFont(font);
  made->setWordWrap(true);
  made->setTextInteractionFlags(Qt::TextSelectableByMouse);
  QPalette palette = made->palette();
  palette.setColor(QPalette::WindowText, colour);
  made->setPalette(palette);
  return made;
}

QFrame* hairline(const Palette& palette) {
  auto* line = new QFrame;
  line->setFixedHeight(1);
  line->setAutoFillBackground(true);
  QPalette colours = line->palette();
  colours.setColor(QPalette::Window, palette.line);
  line->setPalette(colours);
  return line;
}

const QColor& colourOf(Verdict verdict, const Palette& palette) {
  switch (verdict) {
    case Verdict::pass:
      return palette.pass;
    case Verdict::fail:
      return palette.fault;
    case Verdict::undecided:
      return palette.caution;
    case Verdict::none:
      break;
  }
  return palette.dim;
}

QString verdictText(Verdict verdict) {
  const QString word = QString::fromStdString(verdictWord(verdict));
  switch (verdict) {
    case Verdict::pass:
      return "✓ " + word;
    case Verdict::fail:
      return "✕ " + word;
    case Verdict::undecided:
      return "? " + word;
    case Verdict::none:
      break;
  }
  return word;
}

}  // namespace

ResultsPanel::ResultsPanel(const Palette& palette, QWidget* parent) : QWidget(parent), m_palette(palette) {
  setObjectName("resultsPanel");
  m_column = new QVBoxLayout(this);
  m_column->setContentsMargins(0, 0, 0, 0);
}

void ResultsPanel::clear() {
  delete m_content;
  m_content = new QWidget;
  m_grid = new QGridLayout(m_content);
  m_grid->setContentsMargins(0, 0, 0, 0);
  m_grid->setHorizontalSpacing(10);
  m_grid->setVerticalSpacing(4);
  m_grid->setColumnStretch(1, 3);
  m_grid->setColumnStretch(2, 2);
  m_column->addWidget(m_content);
}

void ResultsPanel::addSentence(const QString& text, const QColor& colour) {
  m_grid->addWidget(label(text, font(), colour), m_grid->rowCount(), 0, 1, 4);
}

void ResultsPanel::show(const Step& step, const StepRun* run, const Evaluated* evaluated, bool editable) {
  Json now{{"editable", editable}, {"step", step.key}};
  if (run && evaluated) {
    now["problem"] = evaluated->problem;
    Json result = toJson(evaluated->result);
    result.erase("charts");
    now["result"] = std::move(result);
    for (const auto& adoption : run->adopted) {
      now["adopted"].push_back({adoption.setting, adoption.date});
    }
  }
  if (std::string text = now.dump(); text != m_shown) {
    m_shown = std::move(text);
  } else {
    return;
  }
  clear();
  if (!run || !evaluated) {
    addSentence(tr("Results appear here while you enter readings."), m_palette.dim);
    return;
  }
  const StepResult& result = evaluated->result;
  if (!evaluated->problem.empty()) {
    addSentence(QString::fromStdString(evaluated->problem), m_palette.fault);
    return;
  }
  if (!result.complete) {
    QStringList missing;
    for (const auto& path : result.missing) {
      missing << QString::fromStdString(path);
    }
    addSentence(tr("Still missing: %1").arg(missing.join(", ")), m_palette.dim);
    return;
  }
  for (const auto& proposal : result.settings) {
    addProposal(proposal, step, *run, result, editable);
  }
  const auto arranged = arrangeResults(step, result);
  for (const auto* value : arranged.single) {
    const bool proposed =
        std::any_of(result.settings.begin(), result.settings.end(),
                    [&](const SettingProposal& setting) { return setting.id == value->id; });
    if (!proposed) {
      addValue(step, result, *value);
    }
  }
  for (const auto& [id, text] : result.texts) {
    const int row = m_grid->rowCount();
    m_grid->addWidget(label(QString::fromStdString(resultLabel(step, id)), font(), m_palette.text), row, 0);
    m_grid->addWidget(label(QString::fromStdString(text), font(), m_palette.text), row, 1, 1, 3);
    m_grid->addWidget(hairline(m_palette), row + 1, 0, 1, 4);
  }
  for (const auto& table : arranged.tables) {
    addTable(step, table);
  }
}

void ResultsPanel::addProposal(const SettingProposal& proposal, const Step& step, const StepRun& run,
                               const StepResult& result, bool editable) {
  const int row = m_grid->rowCount();
  const QString id = QString::fromStdString(proposal.id);
  QString name = QString::fromStdString(resultLabel(step, proposal.id));
  for (const auto& setting : step.settings) {
    if (name == id && matchesPattern(proposal.id, setting.id)) {
      const auto dot = id.indexOf('.');
      name = (dot < 0 ? QString() : id.left(dot) + ": ") + QString::fromStdString(setting.label);
    }
  }
  const QString value = proposal.proposed.number
                            ? QString::fromStdString(formatQuantity(quantityOf(proposal, result)))
                            : QString::fromStdString(proposal.proposed.text);
  const QString found = shown(proposal.asFound);
  m_grid->addWidget(label(name, font(), m_palette.text), row, 0);
  m_grid->addWidget(label(value, fontsOf(font().pointSizeF()).resultValue, m_palette.text), row, 1);
  m_grid->addWidget(new SmallLabel(found.isEmpty() ? tr("nothing found")
                                                   : tr("as found %1").arg(withUnit(found, proposal.unit))),
                    row, 2);
  const bool adopted = adoptionOf(run, proposal.id) != nullptr;
  auto* button = new QPushButton(adopted ? tr("Take back") : tr("Adopt"));
  button->setObjectName((adopted ? "takeBack_" : "adopt_") + id);
  button->setAccessibleName(adopted ? tr("Take back %1").arg(name) : tr("Adopt %1").arg(name));
  button->setEnabled(editable);
  connect(button, &QPushButton::clicked, this, [this, proposal, adopted, id] {
    if (adopted) {
      emit takeBackWanted(id);
    } else {
      emit adoptWanted(proposal);
    }
  });
  m_grid->addWidget(button, row, 3);
  m_grid->addWidget(hairline(m_palette), row + 1, 0, 1, 4);
}

void ResultsPanel::addValue(const Step& step, const StepResult& result, const ResultValue& value) {
  const int row = m_grid->rowCount();
  const bool headline =
      std::any_of(step.headline.begin(), step.headline.end(),
                  [&](const std::string& pattern) { return matchesPattern(value.id, pattern); });
  const QFont figures = headline ? fontsOf(font().pointSizeF()).resultValue : font();
  m_grid->addWidget(label(QString::fromStdString(resultLabel(step, value.id)), font(), m_palette.text), row,
                    0);
  if (value.quantity) {
    m_grid->addWidget(
        label(QString::fromStdString(formatQuantity(*value.quantity)), figures, m_palette.text), row, 1);
  } else {
    m_grid->addWidget(label(QString::fromStdString(value.why), font(), m_palette.dim), row, 1, 1, 3);
  }
  if (const auto verdict = result.verdicts.find(value.id); verdict != result.verdicts.end()) {
    const QColor& colour = colourOf(verdict->second, m_palette);
    m_grid->addWidget(label(verdictText(verdict->second), font(), colour), row, 2, 1, 2);
  }
  m_grid->addWidget(hairline(m_palette), row + 1, 0, 1, 4);
}

void ResultsPanel::addTable(const Step& step, const ResultTable& table) {
  Q_UNUSED(step)
  auto* view =
      new QTableWidget(static_cast<int>(table.owners.size()), static_cast<int>(table.columns.size()));
  view->setEditTriggers(QAbstractItemView::NoEditTriggers);
  view->setTabKeyNavigation(false);
  view->setFont(fontsOf(font().pointSizeF()).small);
  view->horizontalHeader()->setFont(view->font());
  view->horizontalHeader()->setDefaultAlignment(Qt::AlignRight | Qt::AlignVCenter);
  view->verticalHeader()->setFont(view->font());
  view->setAccessibleName(tr("Values side by side"));
  QStringList heads;
  for (const auto& column : table.columns) {
    const QString unit = QString::fromStdString(displayUnit(column.unit));
    heads << QString::fromStdString(column.label) + (unit.isEmpty() ? "" : ",\n" + unit);
  }
  view->setHorizontalHeaderLabels(heads);
  for (std::size_t row = 0; row < table.rows.size(); ++row) {
    view->setVerticalHeaderItem(
        static_cast<int>(row),
        new QTableWidgetItem(QString::fromStdString(table.owners[row]).replace('.', ' ')));
    for (std::size_t column = 0; column < table.columns.size(); ++column) {
      const ResultValue* value = table.rows[row][column];
      auto* item =
          new QTableWidgetItem(!value            ? QString()
                               : value->quantity ? QString::fromStdString(formatValue(*value->quantity))
                                                 : QStringLiteral("–"));
      item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
      item->setToolTip(value ? QString::fromStdString(value->why) : QString());
      view->setItem(static_cast<int>(row), static_cast<int>(column), item);
    }
  }
  view->verticalHeader()->setDefaultSectionSize(24);
  view->resizeColumnsToContents();
  const int height =
      view->horizontalHeader()->sizeHint().height() + 24 * static_cast<int>(table.rows.size()) + 18;
  view->setFixedHeight(height);
  m_grid->addWidget(view, m_grid->rowCount(), 0, 1, 4);
}

}  // namespace fettle::ui
