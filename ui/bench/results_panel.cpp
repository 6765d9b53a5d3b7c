#include "ui/bench/results_panel.h"

#include <QApplication>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>

#include "core/measure/format.h"
#include "core/measure/text.h"
#include "core/measure/unit.h"
#include "core/report/report_words.h"
#include "core/steps/contract/wording.h"
#include "ui/bench/result_table.h"
#include "ui/bench/result_words.h"
#include "ui/theme/look.h"
#include "ui/theme/type_label.h"

namespace fettle::ui {
namespace {

/// Whether what is proposed is the quantity measured, not one preferred to it.
bool isMeasured(const SettingProposal& proposal, const StepResult& result) {
  const Quantity* same = result.quantity(proposal.id);
  return same && proposal.proposed.number == same->value;
}

Quantity quantityOf(const SettingProposal& proposal, const StepResult& result) {
  if (isMeasured(proposal, result)) {
    return *result.quantity(proposal.id);
  }
  Quantity quantity = plainQuantity(*proposal.proposed.number, proposal.unit);
  quantity.u = proposal.u;
  return quantity;
}

constexpr const char* settingProperty = "setting";  ///< of the buttons: the setting they act on

const Adoption* adoptionOf(const StepRun& run, const std::string& setting) {
  for (const auto& adoption : run.adopted) {
    if (adoption.setting == setting) {
      return &adoption;
    }
  }
  return nullptr;
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

/// What the panel shows of a result: no charts, which are large.
Json shownPart(const StepResult& result) {
  StepResult part;
  part.complete = result.complete;
  part.missing = result.missing;
  part.values = result.values;
  part.texts = result.texts;
  part.settings = result.settings;
  part.judgements = result.judgements;
  return toJson(part);
}

Verdict verdictOn(const std::string& id, const StepResult& result) {
  const Judged* judged = result.judgement(id);
  return judged ? judged->verdict : Verdict::none;
}

/// Which rows a result has, without their values: equal for results that differ in figures only.
std::string skeletonOf(const Step& step, const StepRun& run, const StepResult& result, bool editable) {
  Json rows = Json::array({step.key, editable, result.missing.empty()});
  for (const auto& setting : result.settings) {
    rows.push_back({setting.id, adoptionOf(run, setting.id) != nullptr});
  }
  for (const auto& value : result.values) {
    rows.push_back({value.id, value.quantity.has_value(), verdictOn(value.id, result) != Verdict::none});
  }
  for (const auto& text : result.texts) {
    rows.push_back({text.id, text.text.empty()});
  }
  return rows.dump();
}

}  // namespace

ResultsPanel::ResultsPanel(const Palette& palette, QWidget* parent) : QWidget(parent), m_palette(palette) {
  setObjectName("resultsPanel");
  m_column = new QVBoxLayout(this);
  m_column->setContentsMargins(0, 0, 0, 0);
}

void ResultsPanel::clear() {
  delete m_content;
  m_labels.clear();
  m_tables.clear();
  m_skeleton.clear();
  m_content = new QWidget;
  m_grid = new QGridLayout(m_content);
  m_grid->setContentsMargins(0, 0, 0, 0);
  m_grid->setHorizontalSpacing(10);
  m_grid->setVerticalSpacing(4);
  m_grid->setColumnStretch(1, 3);
  m_grid->setColumnStretch(2, 2);
  m_column->addWidget(m_content);
}

void ResultsPanel::put(const QString& text, QFont Fonts::*type, const QColor& colour, int column,
                       int columns) {
  QLabel* label = m_refilling ? m_labels[m_nextLabel++] : new TypeLabel(type);
  if (label->text() != text) {
    label->setText(text);
    label->setWordWrap(text.contains(QLatin1Char(' ')));  // one piece keeps its width
  }
  if (QPalette colours = label->palette(); colours.color(QPalette::WindowText) != colour) {
    colours.setColor(QPalette::WindowText, colour);
    label->setPalette(colours);
  }
  if (!m_refilling) {
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_grid->addWidget(label, m_row, column, 1, columns);
    m_labels.push_back(label);
  }
}

void ResultsPanel::endRow() {
  if (!m_refilling) {
    m_grid->addWidget(hairline(m_palette), m_row + 1, 0, 1, 4);
  }
  m_row += 2;
}

void ResultsPanel::show(const Step& step, const StepRun* run, const Evaluated* evaluated, bool editable) {
  Json now{{"editable", editable}, {"step", step.key}};
  if (run && evaluated) {
    now["problem"] = evaluated->problem;
    now["result"] = shownPart(evaluated->result);
    for (const auto& adoption : run->adopted) {
      now["adopted"].push_back({adoption.setting, adoption.date});
    }
  }
  if (std::string text = now.dump(); text != m_shown) {
    m_shown = std::move(text);
  } else {
    return;
  }
  m_row = 0;
  const bool isEmpty = evaluated && evaluated->result.values.empty() && evaluated->result.texts.empty();
  if (run && evaluated && evaluated->problem.empty() && !isEmpty) {
    fill(step, *run, evaluated->result, editable);
    return;
  }
  m_refilling = false;
  clear();
  if (!run || !evaluated) {
    put(tr("Results appear here while you enter readings."), &Fonts::base, m_palette.dim, 0, 4);
  } else if (!evaluated->problem.empty()) {
    put(QString::fromStdString(evaluated->problem), &Fonts::base, m_palette.fault, 0, 4);
  } else {
    putMissing(step, evaluated->result);
  }
}

void ResultsPanel::putMissing(const Step& step, const StepResult& result) {
  if (!result.missing.empty()) {
    const QString missing = QString::fromStdString(Wording(step).paths(result.missing));
    put(tr("Still missing: %1").arg(missing), &Fonts::base, m_palette.dim, 0, 4);
    ++m_row;
  }
}

void ResultsPanel::fill(const Step& step, const StepRun& run, const StepResult& result, bool editable) {
  const std::string skeleton = skeletonOf(step, run, result, editable);
  m_refilling = skeleton == m_skeleton;
  const QString focused = focusedSetting();
  if (!m_refilling) {
    clear();
  }
  m_skeleton = skeleton;
  m_nextLabel = m_nextTable = 0;
  m_proposals = result.settings;
  const Wording wording(step, &result, subjectName(step, run.inputs, run.subject));
  putMissing(step, result);
  for (const auto& proposal : result.settings) {
    addProposal(proposal, wording, run, result, editable);
  }
  const auto arranged = arrangeResults(wording, result);
  for (const auto* value : arranged.single) {
    const QString label = QString::fromStdString(wording.label(value->id));
    const auto proposal = std::find_if(result.settings.begin(), result.settings.end(),
                                       [&](const auto& setting) { return setting.id == value->id; });
    if (proposal == result.settings.end()) {
      addValue(label, wording.step(), result, *value);
    } else if (!isMeasured(*proposal, result)) {
      addValue(tr("%1, measured").arg(label), wording.step(), result, *value);
    }
  }
  for (const auto& [label, text] : arranged.texts) {
    addText(QString::fromStdString(label), QString::fromStdString(text));
  }
  for (const auto& table : arranged.tables) {
    addTable(table, result);
  }
  giveBackFocus(focused);
}

QString ResultsPanel::focusedSetting() const {
  const QWidget* focus = QApplication::focusWidget();
  const bool isHere = focus && m_content && m_content->isAncestorOf(focus);
  return isHere ? focus->property(settingProperty).toString() : QString();
}

void ResultsPanel::giveBackFocus(const QString& setting) {
  const auto buttons = findChildren<QPushButton*>();
  const auto same = std::find_if(buttons.begin(), buttons.end(), [&](const QPushButton* button) {
    return !setting.isEmpty() && button->property(settingProperty).toString() == setting;
  });
  if (same != buttons.end()) {  // once it is shown
    QTimer::singleShot(0, *same, qOverload<>(&QWidget::setFocus));
  }
}

void ResultsPanel::addProposal(const SettingProposal& proposal, const Wording& wording, const StepRun& run,
                               const StepResult& result, bool editable) {
  const QString name = QString::fromStdString(wording.label(proposal.id));
  const QString value = proposal.proposed.number
                            ? unbroken(formatQuantity(quantityOf(proposal, result)))
                            : QString::fromStdString(wording.text(proposal.id, proposal.proposed.text));
  const QString found = QString::fromStdString(
      withUnit(proposal.asFound.number ? formatNumber(*proposal.asFound.number)
                                       : wording.text(proposal.id, proposal.asFound.text),
               proposal.unit));
  put(name, &Fonts::base, m_palette.text, 0);
  put(value, &Fonts::resultValue, m_palette.text, 1, 2);
  if (!m_refilling) {
    addButton(proposal, name, adoptionOf(run, proposal.id) != nullptr, editable);
  }
  ++m_row;
  put(found.isEmpty() ? tr("as found: not known") : tr("as found %1").arg(found), &Fonts::small,
      m_palette.dim, 0, 3);
  endRow();
}

void ResultsPanel::addButton(const SettingProposal& proposal, const QString& name, bool adopted,
                             bool editable) {
  const QString id = QString::fromStdString(proposal.id);
  auto* button = new QPushButton(adopted ? tr("Take back") : tr("Adopt"));
  button->setObjectName((adopted ? "takeBack_" : "adopt_") + id);
  button->setProperty(settingProperty, id);
  button->setAccessibleName(adopted ? tr("Take back %1").arg(name) : tr("Adopt %1").arg(name));
  button->setEnabled(editable);
  connect(button, &QPushButton::clicked, this, [this, setting = proposal.id, adopted, id] {
    if (adopted) {
      emit takeBackWanted(id);
      return;
    }
    for (const auto& now : std::vector(m_proposals)) {  // the value may have changed since
      if (now.id == setting) {
        emit adoptWanted(now);
      }
    }
  });
  m_grid->addWidget(button, m_row, 3, 2, 1);
}

void ResultsPanel::addText(const QString& label, const QString& text) {
  put(label, &Fonts::base, m_palette.text, 0);
  put(text, &Fonts::base, m_palette.text, 1, 3);
  endRow();
}

void ResultsPanel::addValue(const QString& label, const Step& step, const StepResult& result,
                            const ResultValue& value) {
  const auto& headlines = step.headline;
  const bool headline = std::any_of(headlines.begin(), headlines.end(), [&](const std::string& pattern) {
    return matchesPattern(value.id, pattern);
  });
  put(label, &Fonts::base, m_palette.text, 0);
  const Verdict verdict = verdictOn(value.id, result);
  const int columns = verdict == Verdict::none ? 3 : 1;
  if (value.quantity) {
    put(unbroken(formatQuantity(*value.quantity)), headline ? &Fonts::resultValue : &Fonts::base,
        m_palette.text, 1, columns);
  } else {
    put(QString::fromStdString(value.why), &Fonts::base, m_palette.dim, 1, columns);
  }
  if (verdict != Verdict::none) {
    put(QString::fromStdString(verdictText(verdict)), &Fonts::base, colourOf(verdict, m_palette), 2, 2);
  }
  endRow();
}

void ResultsPanel::addTable(const ResultTable& table, const StepResult& result) {
  if (!m_refilling) {
    m_tables.push_back(new ResultTableView(m_palette));
    m_grid->addWidget(m_tables.back(), m_row, 0, 1, 4);
  }
  m_tables[m_nextTable++]->show(table, result);
  ++m_row;
  for (const auto& notes : table.notes) {
    put(QString::fromStdString(notes.label), &Fonts::small, m_palette.dim, 0, 4);
    ++m_row;
    for (std::size_t i = 0; i < notes.texts.size(); ++i) {
      if (!notes.texts[i].empty()) {
        addText(QString::fromStdString(table.owners[i]), QString::fromStdString(notes.texts[i]));
      }
    }
  }
}

}  // namespace fettle::ui
