#pragma once
#include <QStyledItemDelegate>
#include <functional>

#include "core/fields/field.h"
#include "ui/forms/cell_view.h"

namespace fettle::ui {

/// Draws and edits cells by the field they belong to. The edit role of the model is text in and out.
/// Enter and Tab commit and go on; text that cannot be accepted keeps the editor open and is selected,
/// leaving it by other ways brings the old value back.
class CellDelegate : public QStyledItemDelegate {
  Q_OBJECT
 public:
  using FieldOf = std::function<const Field*(const QModelIndex&)>;
  CellDelegate(FieldOf fieldOf, QObject* parent);

  QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const override;
  void setEditorData(QWidget* editor, const QModelIndex& index) const override;
  void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;
  void paint(QPainter* painter, const QStyleOptionViewItem& option,
             const QModelIndex& index) const override;

 signals:
  /// One sentence on what is typed, empty when all is well.
  void problemChanged(const QString& sentence) const;
  void left(fettle::ui::CellView::Way way);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QWidget* lineEditor(QWidget* parent, const Field& field, const QModelIndex& index) const;
  QWidget* choiceEditor(QWidget* parent, const Field& field) const;
  bool leave(QWidget* editor, CellView::Way way);

  FieldOf m_fieldOf;
};

}  // namespace fettle::ui
