#pragma once
#include <QAbstractTableModel>

#include "core/fields/field.h"

namespace fettle::ui {

/// The answers of a checklist value by item, and the value made again of them: one object per answered
/// item, in the order of the list.
const Json& answerOf(const Json& answers, const std::string& item);
Json withAnswer(const Json& answers, const Field& checklist, const std::string& item, const Json& answer);

/// The items of a checklist: what to look at, the answer, a remark, who and when.
class ChecklistModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column { itemColumn, answerColumn, remarkColumn, byColumn };

  explicit ChecklistModel(Field field, QObject* parent = nullptr);
  void setAnswers(const Json& answers);
  const Json& answer(int row) const;
  const Choice& item(int row) const { return m_field.choices[static_cast<std::size_t>(row)]; }
  void setReadOnly(bool readOnly);

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;
  QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;

 signals:
  void remarkEdited(int row, const QString& remark);

 private:
  QString shown(int row, int column) const;

  Field m_field;
  Json m_answers = Json::array();
  bool m_readOnly = false;
};

}  // namespace fettle::ui
