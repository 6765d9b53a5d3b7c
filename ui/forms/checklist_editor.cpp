#include "ui/forms/checklist_editor.h"

#include <QApplication>
#include <QKeyEvent>
#include <QVBoxLayout>

#include "ui/forms/cell_delegate.h"
#include "ui/forms/checklist_model.h"
#include "ui/forms/checklist_view.h"
#include "ui/forms/field_value.h"
#include "ui/forms/keys.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {
namespace {

const Field* remarkField() {
  static const Field field = [] {
    Field remark;
    remark.key = "remark";
    remark.kind = FieldKind::text;
    remark.label = ChecklistEditor::tr("remark").toStdString();
    return remark;
  }();
  return &field;
}

}  // namespace

ChecklistEditor::ChecklistEditor(Field described, const FormContext& context, QWidget* parent)
    : FieldEditor(std::move(described), parent),
      m_context(context),
      m_model(new ChecklistModel(field(), this)),
      m_view(new ChecklistView) {
  setObjectName(childName("ChecklistEditor"));
  m_view->setObjectName(childName("TableView"));
  nameFor(m_view);
  m_view->setToolTip({});
  m_view->setModel(m_model);
  m_view->setRowNumbersShown(false);  // the items have names, the room is theirs
  m_view->setMostRows(static_cast<int>(field().choices.size()));
  m_view->setEnterDirection(CellView::Direction::down);
  m_view->setKeyHook(
      [this](const QModelIndex& index, QKeyEvent* event) { return handleKey(index, event); });
  auto* delegate = new CellDelegate(
      [](const QModelIndex& i) {
        return i.column() == ChecklistModel::remarkColumn ? remarkField() : nullptr;
      },
      this);
  m_view->setItemDelegate(delegate);
  m_view->setCurrentIndex(m_model->index(0, ChecklistModel::answerColumn));
  auto* keys = new SmallLabel(
      tr("Space: ok    X: not ok    Delete: not answered    letters: remark    Enter: next"));
  keys->setWordWrap(true);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(2);
  layout->addWidget(makeCaption(m_view));
  layout->addWidget(m_view);
  layout->addWidget(keys);
  setFocusProxy(m_view);
  connect(delegate, &CellDelegate::left, this, [this](CellView::Way way) {
    toAnswer();
    m_view->go(way);
  });
  connect(m_model, &ChecklistModel::remarkEdited, this, &ChecklistEditor::takeRemark);
  connect(m_view, &CellView::commanded, this, [this](CellCommand command) {
    if (command == CellCommand::clear) {
      answer(m_view->currentIndex().row(), {});
    }
  });
  connect(m_view, &QAbstractItemView::clicked, this, [this](const QModelIndex& index) {
    if (index.column() == ChecklistModel::answerColumn) {
      const Json& now = memberOf(m_model->answer(index.row()), "ok");
      answer(index.row(), now.is_null() ? Json(true) : now == Json(true) ? Json(false) : Json());
    }
  });
}

void ChecklistEditor::setReadOnly(bool readOnly) {
  m_readOnly = readOnly;
  m_model->setReadOnly(readOnly);
}

bool ChecklistEditor::commitPending() {
  if (m_view->viewport()->isAncestorOf(QApplication::focusWidget())) {
    m_view->setFocus();
  }
  return true;  // a remark may say anything
}

void ChecklistEditor::focusOn(int row, const std::string& /*column*/) {
  if (row > 0 && row <= m_model->rowCount()) {
    m_view->goTo(m_model->index(row - 1, ChecklistModel::answerColumn));
  }
  setFocus(Qt::OtherFocusReason);
}

void ChecklistEditor::showValue(const Json& value) {
  m_model->setAnswers(value);
}

void ChecklistEditor::toAnswer() {
  m_view->goTo(m_view->currentIndex().siblingAtColumn(ChecklistModel::answerColumn));
}

bool ChecklistEditor::handleKey(const QModelIndex& index, QKeyEvent* event) {
  if (index.isValid() && isEnter(*event)) {
    toAnswer();  // the next thing to say is whether the next item is ok
    return false;
  }
  if (m_readOnly || !index.isValid() || !isPrinted(*event)) {
    return false;
  }
  if (event->key() == Qt::Key_Space) {
    if (!event->isAutoRepeat()) {  // a key held down answers nothing it was not asked
      answer(index.row(), true);
      toAnswer();
      m_view->move(CellView::Way::down);
    }
    return true;
  }
  const QModelIndex remark = index.siblingAtColumn(ChecklistModel::remarkColumn);
  if (event->key() == Qt::Key_X && index.column() != ChecklistModel::remarkColumn) {
    answer(index.row(), false);
    m_view->goTo(remark);
    return true;
  }
  m_view->goTo(remark);
  return false;  // the table opens the remark with this letter
}

Json ChecklistEditor::answerObject(int row) const {
  const Json& answer = m_model->answer(row);
  return answer.is_object() ? answer : Json::object();
}

void ChecklistEditor::answer(int row, const Json& ok) {
  Json changed = answerObject(row);
  if (memberOf(changed, "ok") == ok) {
    return;
  }
  for (const char* member : {"ok", "initials", "time"}) {
    changed.erase(member);
  }
  if (!ok.is_null()) {
    changed["ok"] = ok;
    changed["time"] = m_context.now().toString(QStringLiteral("yyyy-MM-ddTHH:mm")).toStdString();
    if (!m_context.initials.isEmpty()) {
      changed["initials"] = m_context.initials.toStdString();
    }
  }
  const QString item = QString::fromStdString(m_model->item(row).label);
  put(row, changed,
      ok.is_null() ? tr("%1: not answered").arg(item)
                   : (ok.get<bool>() ? tr("%1: ok") : tr("%1: not ok")).arg(item));
}

void ChecklistEditor::takeRemark(int row, const QString& remark) {
  Json changed = answerObject(row);
  if (remark.isEmpty()) {
    changed.erase("remark");
  } else {
    changed["remark"] = remark.toStdString();
  }
  put(row, changed, tr("%1: remark").arg(QString::fromStdString(m_model->item(row).label)));
}

void ChecklistEditor::put(int row, Json changed, const QString& what) {
  if (m_readOnly) {
    return;
  }
  const std::string& item = m_model->item(row).key;
  changed.erase("item");
  if (changed.empty()) {
    changed = Json();
  } else {
    changed["item"] = item;
  }
  const Json answers = withAnswer(value(), field(), item, changed);
  m_model->setAnswers(answers);
  commit(answers, what);
}

}  // namespace fettle::ui
