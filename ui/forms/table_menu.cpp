#include "ui/forms/table_menu.h"

#include <QActionGroup>
#include <QMenu>

#include "ui/forms/field_value.h"
#include "ui/forms/form_words.h"
#include "ui/forms/instrument_bar.h"
#include "ui/forms/table_model.h"

namespace fettle::ui {
namespace {

void addCommand(QMenu& menu, TableActions& table, CellCommand command, const QString& text,
                const QKeySequence& key) {
  QAction* action = menu.addAction(text, &menu, [&table, command] { table.run(command); });
  action->setShortcut(key);  // shown only; the table reads its keys itself
  action->setShortcutContext(Qt::WidgetShortcut);
  action->setEnabled(command == CellCommand::copy || !table.isReadOnly());
}

void addCommands(QMenu& menu, TableActions& table) {
  addCommand(menu, table, CellCommand::cut, FormWords::tr("Cut"), QKeySequence::Cut);
  addCommand(menu, table, CellCommand::copy, FormWords::tr("Copy"), QKeySequence::Copy);
  addCommand(menu, table, CellCommand::paste, FormWords::tr("Paste"), QKeySequence::Paste);
  QAction* file =
      menu.addAction(FormWords::tr("Take from a file…"), &menu, [&table] { table.chooseFile(); });
  file->setEnabled(!table.isReadOnly());
  menu.addSeparator();
  addCommand(menu, table, CellCommand::insertRow, FormWords::tr("Insert a row"), Qt::Key_Insert);
  addCommand(menu, table, CellCommand::removeRows, FormWords::tr("Remove rows"), Qt::CTRL | Qt::Key_Delete);
  addCommand(menu, table, CellCommand::exclude, FormWords::tr("Leave rows out, or take them in again"),
             Qt::CTRL | Qt::Key_D);
  menu.addSeparator();
}

void addInstruments(QMenu& menu, TableActions& table, int only) {
  for (int c = 0; c < table.model().columnCount(); ++c) {
    const Field& column = table.model().field(c);
    if (isMeasured(column) && (only < 0 || only == c) && table.model().appliesAnywhere(c)) {
      QMenu* part =
          menu.addMenu(FormWords::tr("%1 is read with").arg(QString::fromStdString(column.label)));
      table.instrumentBar().fillMenu(*part, {column}, table.instruments());
      part->setEnabled(!table.isReadOnly());
    }
  }
}

void addColumns(QMenu& menu, TableActions& table) {
  QMenu* columns = menu.addMenu(FormWords::tr("Columns"));
  for (int c = 0; c < table.model().columnCount(); ++c) {
    const Field& column = table.model().field(c);
    QAction* action = columns->addAction(captionOf(column));
    const bool isHidden = table.memory().hidden.count(column.key) > 0;
    action->setCheckable(true);
    action->setChecked(!isHidden || !table.mayHide(c));
    action->setEnabled(table.mayHide(c));
    QObject::connect(action, &QAction::toggled, &menu, [&table, key = column.key](bool isShown) {
      TableMemory memory = table.memory();
      if (isShown) {
        memory.hidden.erase(key);
      } else {
        memory.hidden.insert(key);
      }
      table.remember(memory);
    });
  }
}

void addDirections(QMenu& menu, TableActions& table) {
  auto* group = new QActionGroup(&menu);
  for (const auto& [direction, text] :
       {std::pair{CellView::Direction::right, FormWords::tr("Enter goes to the right")},
        std::pair{CellView::Direction::down, FormWords::tr("Enter goes down")}}) {
    QAction* action = menu.addAction(text);
    action->setCheckable(true);
    action->setChecked(table.memory().enter == direction);
    group->addAction(action);
    QObject::connect(action, &QAction::triggered, &menu, [&table, way = direction] {
      TableMemory memory = table.memory();
      memory.enter = way;
      table.remember(memory);
    });
  }
}

}  // namespace

void fillTableMenu(QMenu& menu, TableActions& table, int column) {
  menu.clear();
  addCommands(menu, table);
  addInstruments(menu, table, column);
  addColumns(menu, table);
  addDirections(menu, table);
}

}  // namespace fettle::ui
