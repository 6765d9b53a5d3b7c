#include "ui/forms/instrument_bar.h"

#include <QActionGroup>
#include <QApplication>
#include <QEvent>
#include <QMenu>
#include <QToolButton>
#include <algorithm>

#include "core/measure/format.h"
#include "core/measure/unit.h"
#include "ui/forms/field_value.h"
#include "ui/forms/flow_layout.h"
#include "ui/theme/look.h"

namespace fettle::ui {
namespace {

struct Group {
  Instrument instrument;
  std::vector<Field> fields;
};

std::vector<Group> groupsOf(const std::vector<Field>& fields, const Json& chosen) {
  std::vector<Group> groups;
  for (const Field& field : fields) {
    if (!isMeasured(field)) {
      continue;
    }
    const Instrument instrument = instrumentOf(field, chosen);
    const auto same = std::find_if(groups.begin(), groups.end(),
                                   [&](const Group& g) { return g.instrument == instrument; });
    if (same == groups.end()) {
      groups.push_back({instrument, {field}});
    } else {
      same->fields.push_back(field);
    }
  }
  return groups;
}

QString labelsOf(const std::vector<Field>& fields) {
  QStringList labels;
  for (const Field& field : fields) {
    labels << QString::fromStdString(field.label);
  }
  return labels.join(", ");
}

/// All that the buttons and their menus depend on.
QString tellingOf(const std::vector<Group>& groups, const std::vector<Instrument>& offered) {
  QStringList words;
  for (const Group& group : groups) {
    words << labelsOf(group.fields) << instrumentWords(group.instrument);
  }
  for (const Instrument& instrument : offered) {
    words << instrumentWords(instrument);
  }
  return words.join('\n');
}

QString figure(double value, const std::string& unit) {
  return QString::fromStdString(withUnit(numberText(value).toStdString(), unit));
}

}  // namespace

bool isMeasured(const Field& field) {
  const auto& i = field.instrument;
  return i && (i->r > 0 || i->e > 0 || i->relativeError > 0);
}

Instrument instrumentOf(const Field& field, const Json& chosen) {
  Instrument instrument = field.instrument.value_or(Instrument{});
  const Json& given = memberOf(chosen, field.key);
  if (given.is_object()) {
    instrument.name = given.value("name", instrument.name);
    instrument.r = given.value("r", 0.0);
    instrument.e = given.value("e", 0.0);
    instrument.relativeError = given.value("relative", 0.0);
  }
  return instrument;
}

QString instrumentWords(const Instrument& instrument) {
  QStringList words{QString::fromStdString(instrument.name)};
  if (instrument.relativeError > 0) {
    const QString percent = QString::fromStdString(formatPlain(100 * instrument.relativeError));
    words << (instrument.e > 0 ? InstrumentBar::tr("± %1 and %2 % of the reading")
                                     .arg(figure(instrument.e, instrument.unit), percent)
                               : InstrumentBar::tr("± %1 % of the reading").arg(percent));
  } else if (instrument.e > 0) {
    words << InstrumentBar::tr("± %1").arg(figure(instrument.e, instrument.unit));
  }
  if (instrument.r > 0) {
    words << InstrumentBar::tr("reads to %1").arg(figure(instrument.r, instrument.unit));
  }
  return words.join(", ");
}

Json withInstrument(const Json& chosen, const Field& field, const Instrument& instrument) {
  Json changed = chosen.is_object() ? chosen : Json::object();
  if (field.instrument && instrument == *field.instrument) {
    changed.erase(field.key);
  } else {
    changed[field.key] = {{"name", instrument.name}, {"r", instrument.r}, {"e", instrument.e}};
    if (instrument.relativeError > 0) {
      changed[field.key]["relative"] = instrument.relativeError;
    }
  }
  return changed.empty() ? Json() : changed;
}

InstrumentBar::InstrumentBar(const FormContext& context, QWidget* parent)
    : QWidget(parent), m_context(context), m_layout(new FlowLayout(0, this)) {
  setObjectName("instrumentBar");
}

void InstrumentBar::show(const std::vector<Field>& fields, const Json& chosen) {
  const std::vector<Group> groups = groupsOf(fields, chosen);
  setVisible(!groups.empty());
  if (const QString telling = tellingOf(groups, m_context.instruments); telling != m_shown) {
    m_shown = telling;
  } else {
    return;
  }
  while (QLayoutItem* item = m_layout->takeAt(0)) {
    item->widget()->setParent(nullptr);
    item->widget()->deleteLater();  // its menu may be the one that is open
    delete item;
  }
  for (const Group& group : groups) {
    auto* button = new QToolButton;
    button->setAutoRaise(true);
    button->setFont(fontsOf(font().pointSizeF()).small);
    button->setText(
        tr("%1: %2 ▾").arg(labelsOf(group.fields), QString::fromStdString(group.instrument.name)));
    button->setToolTip(tr("Read with: %1").arg(instrumentWords(group.instrument)));
    button->setAccessibleName(tr("instrument of %1").arg(labelsOf(group.fields)));
    button->setObjectName(objectNameOf(group.fields.front().key) + "InstrumentButton");
    button->setPopupMode(QToolButton::InstantPopup);
    button->setEnabled(!m_readOnly);
    auto* menu = new QMenu(button);
    fillMenu(*menu, group.fields, chosen);
    button->setMenu(menu);
    m_layout->addWidget(button);
  }
}

void InstrumentBar::setReadOnly(bool readOnly) {
  m_readOnly = readOnly;
  for (auto* button : findChildren<QToolButton*>()) {
    button->setEnabled(!readOnly);
  }
}

void InstrumentBar::fillMenu(QMenu& menu, const std::vector<Field>& fields, const Json& chosenNow) {
  const Field& first = fields.front();
  const Instrument now = instrumentOf(first, chosenNow);
  std::vector<Instrument> offered{*first.instrument};
  const auto offer = [&](const Instrument& instrument) {
    if (instrument.unit == now.unit &&
        std::find(offered.begin(), offered.end(), instrument) == offered.end()) {
      offered.push_back(instrument);
    }
  };
  std::for_each(m_context.instruments.begin(), m_context.instruments.end(), offer);
  offer(now);
  auto* group = new QActionGroup(&menu);
  for (const Instrument& instrument : offered) {
    QAction* action = menu.addAction(instrumentWords(instrument));
    action->setCheckable(true);
    action->setChecked(instrument == now);
    group->addAction(action);
    connect(action, &QAction::triggered, this,
            [this, fields, instrument] { emit chosen(fields, instrument); });
  }
}

bool InstrumentBar::event(QEvent* event) {
  if (event->type() == QEvent::ApplicationFontChange) {
    for (auto* button : findChildren<QToolButton*>()) {
      button->setFont(fontsOf(QApplication::font().pointSizeF()).small);
    }
  }
  return QWidget::event(event);
}

}  // namespace fettle::ui
