#pragma once
#include <QDialog>

#include "ui/forms/grid_value.h"

namespace fettle::ui {

class InputForm;

/// Asks for first and last position and the number of lines along x and y.
class EvenGridDialog : public QDialog {
  Q_OBJECT
 public:
  /// Begins with the ends of the grid that is there.
  EvenGridDialog(const GridValue& grid, const std::string& unit, QWidget* parent);
  std::vector<double> positions(GridAxis axis) const;

 protected:
  bool event(QEvent* event) override;

 private:
  void take(const std::string& key, const Json& value);

  InputForm* m_form;
  QWidget* m_ok;
  Json m_values;
};

}  // namespace fettle::ui
