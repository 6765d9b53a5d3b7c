#pragma once
#include <QWidget>

#include "core/intake/height_grid.h"
#include "ui/forms/grid_value.h"

namespace fettle::ui {

class CellView;
class GridModel;
class InputForm;
class SmallLabel;

/// How a grid lies in a text: what its lines and columns are and where they are on the bed. Shows the grid
/// that comes of it as the bed lies before you.
class GridTurning : public QWidget {
  Q_OBJECT
 public:
  explicit GridTurning(const Field& field, QWidget* parent = nullptr);
  /// Takes over how an earlier text lay.
  void setRemembered(const Json& reference);
  /// Positions to use where the text names none.
  void setPositions(const GridValue& grid) { m_known = grid; }
  /// Renews what is suggested for this text; no change of the user's, so nothing is told.
  void show(const GridText& text);
  /// Puts positions and turning into a reference to a file.
  void describe(Json& reference) const;
  /// One sentence when typed positions cannot be read.
  QString problem() const { return m_problem; }
  void showResult(const Json& grid);

 signals:
  /// The user turned something or typed positions.
  void changed();

 private:
  void take(const std::string& key, const Json& value);
  /// Reads the positions and shows how the grid lies: a falling list, or positions in the text, say
  /// themselves from which end they begin; what the user chose is kept for a list that rises.
  void read();
  /// Lets a falling list rise, when the user says that it does not begin at the far end.
  void turnTyped(GridAxis axis);
  /// Whether the axis runs along the lines of the text.
  bool runsAcross(GridAxis axis) const;
  /// Positions the text itself holds.
  const std::vector<double>& inText(GridAxis axis) const;
  std::size_t countOf(GridAxis axis) const;
  QString suggested(GridAxis axis) const;

  InputForm* m_form;
  GridModel* m_model;
  CellView* m_view;
  SmallLabel* m_front;
  GridText m_text;
  GridValue m_known;
  Json m_values = Json::object();  ///< as the user said, or as suggested
  std::vector<double> m_x, m_y;    ///< as typed, in the order of the text
  QString m_problem;
};

}  // namespace fettle::ui
