#include "ui/forms/input_path.h"

#include <QRegularExpression>

#include "ui/forms/field_value.h"

namespace fettle::ui {

QString InputPath::text() const {
  const QString top = QString::fromStdString(key);
  return row == 0 ? top : QStringLiteral("%1[%2].%3").arg(top).arg(row).arg(QString::fromStdString(column));
}

InputPath InputPath::fromText(const QString& text) {
  static const QRegularExpression cell(QStringLiteral("^(.+)\\[(\\d+)\\]\\.(.+)$"));
  const auto match = cell.match(text);
  if (!match.hasMatch()) {
    return {text.toStdString(), 0, {}};
  }
  return {match.captured(1).toStdString(), match.captured(2).toInt(), match.captured(3).toStdString()};
}

Json withValueAt(const Json& inputs, const InputPath& path, const Json& value) {
  if (path.row == 0) {
    return value;
  }
  Json rows = memberOf(inputs, path.key);
  if (!rows.is_array()) {
    rows = Json::array();
  }
  const auto index = static_cast<std::size_t>(path.row - 1);
  while (rows.size() <= index) {
    rows.push_back(Json::object());
  }
  if (isBlank(value)) {
    rows[index].erase(path.column);
  } else {
    rows[index][path.column] = value;
  }
  return rows;
}

}  // namespace fettle::ui
