#include "ui/forms/input_form.h"

#include <QApplication>
#include <QDialog>
#include <QFileDialog>
#include <QFileInfo>
#include <QScrollArea>
#include <QSettings>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "ui/forms/field_editor.h"
#include "ui/forms/field_group.h"
#include "ui/forms/field_value.h"
#include "ui/forms/input_path.h"
#include "ui/forms/instrument_bar.h"
#include "ui/forms/small_editor.h"

namespace fettle::ui {
namespace {

constexpr const char* lastFolder = "forms/folder";  ///< readings lie together

}  // namespace

InputForm::InputForm(EditorMaker makeEditor, QWidget* parent)
    : QWidget(parent), m_makeEditor(std::move(makeEditor)), m_layout(new QVBoxLayout(this)) {
  m_layout->setContentsMargins(0, 0, 0, 0);
  m_layout->setSpacing(9);
  m_context.chooseFiles = [](QWidget* owner, const QString& title) {
    QSettings settings;
    QStringList files = QFileDialog::getOpenFileNames(owner, title, settings.value(lastFolder).toString());
    if (!files.isEmpty()) {
      settings.setValue(lastFolder, QFileInfo(files.front()).path());
    }
    return files;
  };
}

InputForm::~InputForm() = default;

void InputForm::setFields(const std::vector<Field>& fields) {
  if (QWidget* inside = QApplication::focusWidget(); inside && isAncestorOf(inside)) {
    inside->clearFocus();  // an entry that loses the focus tells its editor, which must still be there
  }
  while (QLayoutItem* item = m_layout->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  m_fields = fields;
  m_editors.clear();
  m_stops.clear();
  m_groups.clear();
  FieldGroup* group = nullptr;
  for (const Field& field : fields) {
    FieldEditor* editor = m_makeEditor(field, m_context);
    if (!isSmall(field)) {
      group = nullptr;
      m_layout->addWidget(editor);
    } else {
      if (group == nullptr) {
        group = new FieldGroup(m_context);
        connect(&group->instrumentBar(), &InstrumentBar::chosen, this, &InputForm::chooseInstrument);
        m_groups.push_back(group);
        m_layout->addWidget(group);
      }
      group->add(editor);
    }
    connectEditor(*editor);
    m_editors.push_back(editor);
  }
  m_layout->addStretch(1);
  setReadOnly(m_readOnly);
  setValues(Json::object());
}

void InputForm::connectEditor(FieldEditor& editor) {
  const QString key = QString::fromStdString(editor.field().key);
  connect(&editor, &FieldEditor::committed, this,
          [this, key](const Json& value, const QString& what) { emit edited(key, value, what); });
  connect(&editor, &FieldEditor::fileChosen, this, &InputForm::fileChosen);
  connect(&editor, &FieldEditor::tableFileChosen, this,
          [this, key](const QString& fileName) { emit tableFileChosen(key, fileName); });
  connect(&editor, &FieldEditor::instrumentChosen, this, &InputForm::chooseInstrument);
}

void InputForm::setValues(const Json& inputs) {
  m_values = inputs.is_object() ? inputs : Json::object();
  for (FieldEditor* editor : m_editors) {
    editor->setValue(memberOf(m_values, editor->field().key));
  }
  showConditions();
  const Json& chosen = memberOf(m_values, "instruments");
  if (chosen != m_instruments) {
    m_instruments = chosen;
    for (FieldEditor* editor : m_editors) {
      editor->showInstruments(m_instruments);
    }
  }
  for (FieldGroup* group : m_groups) {
    group->showInstruments(m_instruments);
  }
  orderTabs(entries() + menus(), m_stops);
}

void InputForm::showConditions() {
  for (FieldEditor* editor : m_editors) {
    editor->setVisible(applies(editor->field(), m_values, m_fields));
  }
}

void InputForm::setReadOnly(bool readOnly) {
  m_readOnly = readOnly;
  for (FieldEditor* editor : m_editors) {
    editor->setReadOnly(readOnly);
  }
  for (FieldGroup* group : m_groups) {
    group->setReadOnly(readOnly);
  }
}

void InputForm::setInstruments(std::vector<Instrument> instruments) {
  m_context.instruments = std::move(instruments);
  for (FieldEditor* editor : m_editors) {
    editor->showInstruments(m_instruments);
  }
  for (FieldGroup* group : m_groups) {
    group->showInstruments(m_instruments);
  }
}

void InputForm::setInitials(const QString& initials) {
  m_context.initials = initials;
}

void InputForm::setClock(std::function<QDateTime()> now) {
  m_context.now = std::move(now);
}

void InputForm::setFileChooser(std::function<QStringList(QWidget*, const QString&)> chooser) {
  m_context.chooseFiles = std::move(chooser);
}

void InputForm::chooseInstrument(const std::vector<Field>& fields, const Instrument& instrument) {
  Json chosen = m_instruments;
  QStringList labels;
  for (const Field& field : fields) {
    chosen = withInstrument(chosen, field, instrument);
    labels << QString::fromStdString(field.label);
  }
  if (chosen != m_instruments) {
    emit edited("instruments", chosen, tr("instrument of %1").arg(labels.join(", ")));
  }
}

FieldEditor* InputForm::commitPending() {
  FieldEditor* refusing = nullptr;
  for (FieldEditor* editor : m_editors) {
    refusing = editor->commitPending() ? refusing : editor;
  }
  return refusing;
}

bool InputForm::focusOn(const QString& path) {
  const InputPath place = InputPath::fromText(path);
  for (FieldEditor* editor : m_editors) {
    if (editor->field().key == place.key) {
      editor->focusOn(place.row, place.column);
      return true;
    }
  }
  return false;
}

void InputForm::focusOnFirst() {
  const auto seen = std::find_if(m_editors.begin(), m_editors.end(),
                                 [](const FieldEditor* editor) { return !editor->isHidden(); });
  if (seen != m_editors.end()) {
    (*seen)->focusOn(1, {});
  }
}

QWidgetList InputForm::entries() const {
  QWidgetList all;
  for (const FieldEditor* editor : m_editors) {
    all << editor->entries();
  }
  return all;
}

void InputForm::goBeyondLast() {
  if (qobject_cast<QDialog*>(window()) != nullptr) {
    focusNextChild();
  }
}

QWidgetList InputForm::menus() const {
  const QWidgetList first = entries();
  QWidgetList stops;
  for (QWidget* other : findChildren<QWidget*>()) {
    const bool isPart = std::any_of(first.begin(), first.end(), [&](const QWidget* entry) {
      return entry == other || entry->isAncestorOf(other);
    });
    if ((other->focusPolicy() & Qt::TabFocus) != 0 && other->focusProxy() == nullptr && !isPart &&
        other->window() == window()) {
      stops << other;
    }
  }
  return stops;
}

}  // namespace fettle::ui
