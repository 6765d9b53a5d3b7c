#include "ui/forms/cell_delegate.h"

#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <optional>

#include "ui/forms/choice_box.h"
#include "ui/forms/field_value.h"
#include "ui/forms/table_model.h"

namespace fettle::ui {
namespace {

constexpr int textMargin = 6;

class CellLine : public QLineEdit {
 public:
  CellLine(const Field& field, QWidget* parent) : QLineEdit(parent), m_field(field) {}
  const Field& field() const { return m_field; }

 private:
  const Field& m_field;
};

/// Yes and no as choices, so that they edit alike.
Field asChoice(const Field& field) {
  Field choice = field;
  if (field.kind == FieldKind::yesNo) {
    choice.fallback = Json();
    choice.choices = {{"true", valueText(field, true).toStdString()},
                      {"false", valueText(field, false).toStdString()}};
  }
  return choice;
}

QString textOf(const QWidget* editor) {
  if (const auto* box = qobject_cast<const ChoiceBox*>(editor)) {
    return box->chosen().is_null() ? QString() : box->currentText();
  }
  return static_cast<const QLineEdit*>(editor)->text();
}

std::optional<CellView::Way> wayOf(const QKeyEvent& key, bool isLine) {
  switch (key.key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
      return CellView::Way::enter;
    case Qt::Key_Tab:
      return CellView::Way::out;
    case Qt::Key_Backtab:
      return CellView::Way::outBack;
    case Qt::Key_Up:
      return isLine ? std::optional(CellView::Way::up) : std::nullopt;
    case Qt::Key_Down:
      return isLine ? std::optional(CellView::Way::down) : std::nullopt;
    default:
      return std::nullopt;
  }
}

bool isLoneCellWithoutFocus(const QStyleOptionViewItem& option) {
  const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
  return view != nullptr && !view->hasFocus() && view->selectionModel()->selectedIndexes().size() == 1;
}

}  // namespace

CellDelegate::CellDelegate(FieldOf fieldOf, QObject* parent)
    : QStyledItemDelegate(parent), m_fieldOf(std::move(fieldOf)) {}

QWidget* CellDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem& /*option*/,
                                    const QModelIndex& index) const {
  const Field* field = m_fieldOf(index);
  if (field == nullptr || field->kind == FieldKind::capture) {
    return nullptr;  // a file is chosen, not typed
  }
  const bool isLine = field->kind == FieldKind::number || field->kind == FieldKind::text;
  QWidget* editor = isLine ? lineEditor(parent, *field, index) : choiceEditor(parent, *field);
  editor->setAccessibleName(captionOf(*field));
  editor->setObjectName(objectNameOf(field->key) + "CellEditor");
  return editor;
}

QWidget* CellDelegate::lineEditor(QWidget* parent, const Field& field, const QModelIndex& index) const {
  auto* line = new CellLine(field, parent);
  line->setAlignment(static_cast<Qt::Alignment>(index.data(Qt::TextAlignmentRole).toInt()));
  connect(line, &QLineEdit::textEdited, this, [this, &field](const QString& text) {
    const auto read = valueFromText(field, text);
    emit problemChanged(read || isUnfinished(field, text) ? QString() : read.error());
  });
  return line;
}

QWidget* CellDelegate::choiceEditor(QWidget* parent, const Field& field) const {
  auto* box = new ChoiceBox(asChoice(field), parent);
  auto* self = const_cast<CellDelegate*>(this);  // signals of a delegate are not const
  connect(box, &ChoiceBox::chosenByUser, self, [self, box] {
    emit self->commitData(box);
    emit self->closeEditor(box, NoHint);
  });
  return box;
}

void CellDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
  const QString text = index.data(Qt::EditRole).toString();
  if (auto* box = qobject_cast<ChoiceBox*>(editor)) {
    const auto value = valueFromText(asChoice(*m_fieldOf(index)), text);
    const bool isYesNo = value && value->is_boolean();
    box->showValue(isYesNo ? Json(value->get<bool>() ? "true" : "false") : value.value_or(Json()));
    return;
  }
  auto* line = static_cast<QLineEdit*>(editor);
  if (!line->isModified()) {  // a change from elsewhere does not wipe out what is being typed
    line->setText(text);
  }
}

void CellDelegate::setModelData(QWidget* editor, QAbstractItemModel* model,
                                const QModelIndex& index) const {
  const QString text = textOf(editor);
  const auto read = valueFromText(*m_fieldOf(index), text);
  if (!read) {
    const QString kept = index.data(Qt::EditRole).toString();
    emit problemChanged(kept.isEmpty() ? tr("%1 The cell stays blank.").arg(read.error())
                                       : tr("%1 The cell keeps %2.").arg(read.error(), kept));
    return;
  }
  emit problemChanged({});
  model->setData(index, text, Qt::EditRole);
}

bool CellDelegate::leave(QWidget* editor, CellView::Way way) {
  if (auto* line = dynamic_cast<CellLine*>(editor)) {
    if (const auto read = valueFromText(line->field(), line->text()); !read) {
      emit problemChanged(read.error());
      line->selectAll();  // what is typed next replaces it
      return true;        // the editor stays open
    }
  }
  emit commitData(editor);
  emit closeEditor(editor, NoHint);
  emit left(way);
  return true;
}

bool CellDelegate::eventFilter(QObject* watched, QEvent* event) {
  auto* editor = qobject_cast<QWidget*>(watched);
  if (editor != nullptr && event->type() == QEvent::KeyPress) {
    const auto* key = static_cast<QKeyEvent*>(event);
    if (const auto way = wayOf(*key, qobject_cast<QLineEdit*>(editor) != nullptr)) {
      return leave(editor, *way);
    }
    if (key->key() == Qt::Key_Escape) {
      emit problemChanged({});
    }
  }
  return QStyledItemDelegate::eventFilter(watched, event);
}

void CellDelegate::paint(QPainter* painter, const QStyleOptionViewItem& given,
                         const QModelIndex& index) const {
  QStyleOptionViewItem option = given;
  initStyleOption(&option, index);
  const bool isCurrent = (option.state & QStyle::State_HasFocus) != 0;
  const bool isExcluded = index.data(TableModel::ExcludedRole).toBool();
  const bool isDim = isExcluded || index.data(TableModel::DimRole).toBool();
  if (isLoneCellWithoutFocus(option)) {
    option.state &= ~QStyle::State_Selected;
  }
  const QStyle* style = option.widget ? option.widget->style() : QApplication::style();
  style->drawPrimitive(QStyle::PE_PanelItemViewItem, &option, painter, option.widget);
  painter->save();
  QFont font = option.font;
  font.setStrikeOut(isExcluded);
  painter->setFont(font);
  painter->setPen(option.palette.color(isDim ? QPalette::PlaceholderText : QPalette::Text));
  const QRect room = option.rect.adjusted(textMargin, 0, -textMargin, 0);
  const bool isTall = room.height() > 2 * QFontMetrics(font).height();
  const QString text =
      isTall ? option.text : QFontMetrics(font).elidedText(option.text, Qt::ElideRight, room.width());
  painter->drawText(room, static_cast<int>(option.displayAlignment) | (isTall ? Qt::TextWordWrap : 0),
                    text);
  if (isCurrent) {
    painter->setPen(option.palette.color(QPalette::Link));
    painter->drawRect(option.rect.adjusted(0, 0, -1, -1));
  }
  painter->restore();
}

}  // namespace fettle::ui
