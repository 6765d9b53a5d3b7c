#pragma once
#include <QStringList>
#include <QTableWidget>
#include <functional>
#include <vector>

#include "core/steps/contract/wording.h"
#include "ui/theme/palette.h"

namespace fettle::ui {

struct ResultCell {
  enum class Kind { head, label, value } kind = Kind::value;
  QString text;
  QString spoken = {};  ///< for a screen reader: owner, quantity and value
  QString tip = {};
  Verdict verdict = Verdict::none;
};
using ResultCells = std::vector<std::vector<ResultCell>>;

/// Results side by side as texts: cells[row][column].
struct ResultMatrix {
  QStringList rows, columns;
  ResultCells cells;

  ResultMatrix turned() const;
};

/// One row for each owner, one column for each quantity, units in the heads.
ResultMatrix matrixOf(const ResultTable& table, const StepResult& result);

/// Lines of cells and the widths they need.
struct FittedCells {
  ResultCells lines;
  int labels = 0, values = 0;
};

/// A matrix as lines of cells that fit into the room: turned if that needs fewer lines, and columns that do
/// not fit follow below under heads of their own. The first column holds the labels of the rows.
/// @param width of a text in the font of the table
FittedCells fittedTo(const ResultMatrix& matrix, int room, const std::function<int(const QString&)>& width);

/// Shows results side by side, and never scrolls sideways for them.
class ResultTableView : public QTableWidget {
  Q_OBJECT
 public:
  explicit ResultTableView(const Palette& palette, QWidget* parent = nullptr);
  void show(const ResultTable& table, const StepResult& result);

 protected:
  bool event(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void layOut();
  void put(int row, int column, const ResultCell& cell);

  const Palette& m_palette;
  ResultMatrix m_matrix;
  int m_room = 0;
};

}  // namespace fettle::ui
