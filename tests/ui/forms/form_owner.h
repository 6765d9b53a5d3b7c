#pragma once
#include <QApplication>
#include <QClipboard>
#include <QLineEdit>
#include <QTableView>
#include <QTest>

#include "core/fields/field_list.h"
#include "ui/forms/any_editor.h"
#include "ui/forms/input_form.h"

namespace fettle::ui::tests {

/// The fields that inputs describe.
template <typename Inputs>
std::vector<Field> fieldsOf() {
  Inputs inputs;
  FieldList list;
  inputs.describe(list);
  return list.fields();
}

/// One committed edit as the form told it.
struct Edit {
  QString path;
  Json value;
  QString what;
};

/// A form with an owner that does what the program does: it takes every edit into the inputs and shows
/// them again at once.
struct FormOwner {
  InputForm form{&makeAnyEditor};
  Json inputs = Json::object();
  std::vector<Edit> edits;
  bool answers = true;  ///< false: an owner that refuses every edit and shows the old inputs

  explicit FormOwner(const std::vector<Field>& fields) {
    QObject::connect(&form, &InputForm::edited, &form,
                     [this](const QString& path, const Json& value, const QString& what) {
                       edits.push_back({path, value, what});
                       if (answers) {
                         inputs[path.toStdString()] = value;
                       }
                       form.setValues(inputs);
                     });
    form.setFields(fields);
    form.resize(446, 600);
    form.show();
    static_cast<void>(QTest::qWaitForWindowActive(&form));
  }

  void show(const Json& values) {
    inputs = values;
    form.setValues(inputs);
  }

  template <typename Widget>
  Widget* find(const char* name) {
    auto* widget = form.findChild<Widget*>(name);
    if (widget == nullptr) {
      qFatal("the form has no %s", name);
    }
    return widget;
  }

  QLineEdit* line(const char* name) { return find<QLineEdit>(name); }
  QTableView* table(const char* name) { return find<QTableView>(name); }

  /// Puts the cursor into a cell, rows and columns from 0.
  QTableView* goTo(const char* name, int row, int column) {
    QTableView* view = table(name);
    view->setFocus();
    view->selectionModel()->setCurrentIndex(view->model()->index(row, column),
                                            QItemSelectionModel::ClearAndSelect);
    return view;
  }

  static QString shown(const QTableView* view, int row, int column) {
    return view->model()->index(row, column).data().toString();
  }
};

/// Types into whatever has the focus, as a keyboard or a caliper does.
inline void type(const QString& text) {
  for (const QChar c : text) {
    const int key = c == '\n' ? Qt::Key_Return : c == '\t' ? Qt::Key_Tab : 0;
    if (key != 0) {
      QTest::keyClick(QApplication::focusWidget(), static_cast<Qt::Key>(key));
    } else {
      QTest::keyClicks(QApplication::focusWidget(), QString(c));
    }
  }
}

inline void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
  QTest::keyClick(QApplication::focusWidget(), key, modifiers);
}

inline void putOnClipboard(const QString& text) {
  QApplication::clipboard()->setText(text);
}

}  // namespace fettle::ui::tests
