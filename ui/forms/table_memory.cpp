#include "ui/forms/table_memory.h"

#include <QSettings>

namespace fettle::ui {
namespace {

// Tables of several steps may bear the same key; the columns tell them apart.
QString groupOf(const Field& table) {
  QStringList keys{QString::fromStdString(table.key)};
  for (const Field& column : table.columns) {
    keys << QString::fromStdString(column.key);
  }
  return "tables/" + keys.join('-');
}

}  // namespace

TableMemory TableMemory::load(const Field& table) {
  QSettings settings;
  settings.beginGroup(groupOf(table));
  TableMemory memory;
  memory.enter =
      settings.value("enter").toString() == "down" ? CellView::Direction::down : CellView::Direction::right;
  for (const QString& key : settings.value("hidden").toStringList()) {
    memory.hidden.insert(key.toStdString());
  }
  return memory;
}

void TableMemory::save(const Field& table) const {
  QSettings settings;
  settings.beginGroup(groupOf(table));
  settings.setValue("enter", enter == CellView::Direction::down ? "down" : "right");
  QStringList keys;
  for (const auto& key : hidden) {
    keys << QString::fromStdString(key);
  }
  settings.setValue("hidden", keys);
}

}  // namespace fettle::ui
