#include "ui/forms/checklist_model.h"

#include <QDateTime>

#include "ui/forms/field_value.h"

namespace fettle::ui {
namespace {

QString wordOf(const Json& answer, const char* key) {
  const Json& word = memberOf(answer, key);
  return word.is_string() ? QString::fromStdString(word.get<std::string>()) : QString();
}

/// Today's answers show the time, older ones the day too.
QString timeWords(const QString& time) {
  const QDateTime when = QDateTime::fromString(time, Qt::ISODate);
  if (!when.isValid()) {
    return time;
  }
  const bool isToday = when.date() == QDate::currentDate();
  return when.toString(isToday ? QStringLiteral("HH:mm") : QStringLiteral("yyyy-MM-dd HH:mm"));
}

}  // namespace

const Json& answerOf(const Json& answers, const std::string& item) {
  static const Json blank;
  if (answers.is_array()) {
    for (const Json& answer : answers) {
      if (memberOf(answer, "item") == Json(item)) {
        return answer;
      }
    }
  }
  return blank;
}

Json withAnswer(const Json& answers, const Field& checklist, const std::string& item, const Json& answer) {
  Json changed = Json::array();
  for (const Choice& choice : checklist.choices) {
    const Json& kept = choice.key == item ? answer : answerOf(answers, choice.key);
    if (!kept.is_null()) {
      changed.push_back(kept);
    }
  }
  return changed.empty() ? Json() : changed;
}

ChecklistModel::ChecklistModel(Field field, QObject* parent)
    : QAbstractTableModel(parent), m_field(std::move(field)) {}

void ChecklistModel::setAnswers(const Json& answers) {
  if (answers != m_answers && rowCount() > 0) {
    m_answers = answers;
    emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
  }
}

const Json& ChecklistModel::answer(int row) const {
  return answerOf(m_answers, item(row).key);
}

void ChecklistModel::setReadOnly(bool readOnly) {
  m_readOnly = readOnly;
}

int ChecklistModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_field.choices.size());
}

int ChecklistModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : 4;
}

QString ChecklistModel::shown(int row, int column) const {
  const Json& given = answer(row);
  const Json& ok = memberOf(given, "ok");
  switch (column) {
    case itemColumn:
      return QString::fromStdString(item(row).label);
    case answerColumn:
      return !ok.is_boolean() ? QString() : ok.get<bool>() ? tr("✓ ok") : tr("✗ not ok");
    case remarkColumn:
      return wordOf(given, "remark");
    default:
      return (wordOf(given, "initials") + " " + timeWords(wordOf(given, "time"))).trimmed();
  }
}

QVariant ChecklistModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) {
    return {};
  }
  switch (role) {
    case Qt::DisplayRole:
    case Qt::EditRole:
      return shown(index.row(), index.column());
    case Qt::ToolTipRole:
      return index.column() == byColumn ? wordOf(answer(index.row()), "time")
                                        : shown(index.row(), index.column());
    case Qt::TextAlignmentRole:
      return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter | Qt::AlignLeft));
    case Qt::AccessibleTextRole: {
      const QString state = shown(index.row(), answerColumn);
      return tr("%1: %2").arg(shown(index.row(), itemColumn), state.isEmpty() ? tr("not answered") : state);
    }
    default:
      return {};
  }
}

bool ChecklistModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::EditRole || index.column() != remarkColumn) {
    return false;
  }
  if (value.toString().trimmed() != shown(index.row(), remarkColumn)) {
    emit remarkEdited(index.row(), value.toString().trimmed());
  }
  return true;
}

QVariant ChecklistModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation == Qt::Vertical) {
    return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
  }
  if (role == Qt::TextAlignmentRole) {
    return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter | Qt::AlignLeft));
  }
  const QStringList captions{tr("look at"), tr("found"), tr("remark"), tr("by, at")};
  return role == Qt::DisplayRole ? QVariant(captions.value(section)) : QVariant();
}

Qt::ItemFlags ChecklistModel::flags(const QModelIndex& index) const {
  const Qt::ItemFlags seen = Qt::ItemIsSelectable | Qt::ItemIsEnabled;
  const bool isEntry = index.column() == answerColumn || index.column() == remarkColumn;
  return isEntry && !m_readOnly ? seen | Qt::ItemIsEditable : seen;
}

}  // namespace fettle::ui
