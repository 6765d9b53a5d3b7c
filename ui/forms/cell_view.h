#pragma once
#include <QTableView>
#include <functional>
#include <optional>
#include <set>

class QLabel;

namespace fettle::ui {

/// What a key asks of a table.
enum class CellCommand { clear, removeRows, insertRow, copy, cut, paste, exclude };

/// A table for entry by keyboard. Enter goes to the next cell, at the last column to the first of the next
/// row; it may instead go down. Tab leaves the table, so does Enter at its end. It is as high as its rows
/// up to a limit, then it scrolls; the page keys are left to the page.
class CellView : public QTableView {
  Q_OBJECT
 public:
  enum class Direction { right, down };
  enum class Way { enter, onward, up, down, out, outBack };

  explicit CellView(QWidget* parent = nullptr);
  /// Whatever keys are held down, exactly this cell is chosen.
  void goTo(const QModelIndex& cell);
  void setModel(QAbstractItemModel* model) override;

  void setEnterDirection(Direction direction) { m_enter = direction; }
  Direction enterDirection() const { return m_enter; }
  void setMostRows(int rows) { m_mostRows = rows; }
  void setRowNumbersShown(bool shown);
  void setCornerText(const QString& text);
  /// Handles keys of the current cell before anything else; true: taken.
  void setKeyHook(std::function<bool(const QModelIndex&, QKeyEvent*)> hook) { m_keyHook = std::move(hook); }

  /// Leaves the current cell within the table; `enter` is the way that was set for it. @return false at its
  /// end
  bool move(Way way);
  /// Leaves the current cell; out of the table to the next or the previous place of entry, at the end of
  /// the table Enter does so too.
  void go(Way way);
  /// Opens the cell as if it had been double-clicked; a cell without an editor is told by cellOpened().
  bool openCell(const QModelIndex& index);
  std::set<int> selectedRows() const;
  /// Selected cells in view, current one alone if there is no selection.
  QModelIndexList chosenCells() const;
  /// Puts the chosen cells on the clipboard for a spreadsheet.
  void copyChosen() const;
  virtual void fitColumns();

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;
  void keyboardSearch(const QString& /*search*/) override {}  // typing is entry

 signals:
  void commanded(fettle::ui::CellCommand command);
  void cellOpened(const QModelIndex& index);
  void filesDropped(const QStringList& fileNames, const QModelIndex& at);

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool edit(const QModelIndex& index, EditTrigger trigger, QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void updateGeometries() override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dragMoveEvent(QDragMoveEvent* event) override;
  void dropEvent(QDropEvent* event) override;

  static constexpr int leastColumn = 44;
  static constexpr int roomy = 20;  ///< around a text, where there is room
  /// Gives columns these widths and the header the height its words need.
  void setColumnWidths(const std::vector<int>& columns, const std::vector<int>& widths);
  /// What the longest text and the longest word of the head need, with so much around them.
  int leastWidth(int column, int padding) const;
  /// Breaks the texts of these columns over lines where they do not fit into one.
  void fitRowHeights(const std::vector<int>& columns);

 private:
  static std::optional<CellCommand> commandOf(const QKeyEvent& event);
  QModelIndex next(const QModelIndex& from, Way way) const;
  bool isPlace(int row, int column) const;
  void fitRows();
  /// The width of a column whose texts are broken between words.
  int leastBroken(int column) const;

  Direction m_enter = Direction::right;
  int m_mostRows = 9;
  std::function<bool(const QModelIndex&, QKeyEvent*)> m_keyHook;
  QLabel* m_corner;
};

}  // namespace fettle::ui
