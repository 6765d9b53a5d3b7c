#pragma once
#include <QDialog>
#include <memory>

#include "core/intake/table_preview.h"
#include "ui/forms/grid_value.h"
#include "ui/forms/intake_check.h"

class QLabel;
class QProgressBar;
class QPushButton;
class QTableWidget;

namespace fettle::ui {

class ColumnMapping;
class GridTurning;
class InputForm;
class SmallLabel;

/// Shows a text before it is taken into a capture, table or grid: its first rows, how it is written, which
/// column is what. Everything recognised can be changed; the whole text is read in the background and what
/// is wrong with it is said in one sentence. How texts of one shape were taken in is remembered.
class IntakeDialog : public QDialog {
  Q_OBJECT
 public:
  /// `name` is the file's name without its folder, or what else the text comes from.
  IntakeDialog(const Field& field, const QString& name, std::string bytes, QWidget* parent = nullptr);

  /// Positions for a grid whose text names none.
  void setPositions(const GridValue& grid);

  /// {"file", "rows"} and, where they matter, "columns", "units", "format", and the turning of a grid.
  Json reference() const;
  /// The rows of a table or the grid {"x", "y", "z"}; null for a capture.
  const Json& value() const { return m_outcome.value; }

  void accept() override;

 private:
  void build(QWidget* part);
  void detect();
  void showSound();
  void showPreview(const TablePreview& preview);
  void showRows(const QStringList& heads, const std::vector<QStringList>& rows);
  void showFormat(const TextFormat& format);
  void takeFormat(const std::string& key, const Json& value);
  /// Of columns or of the turning of a grid.
  void takeChange();
  void check();
  void showOutcome(const IntakeOutcome& outcome);
  void say(const QString& problem);

  Field m_field;
  QString m_name;
  IntakeCheck::Bytes m_bytes;
  Json m_format = Json::object();   ///< what the user says about the format
  Json m_mapping = Json::object();  ///< columns and units to begin with
  std::string m_shape;              ///< of the text as it was detected
  bool m_isAsRecognised = true;     ///< nothing was asked or changed so far
  IntakeOutcome m_outcome;
  IntakeCheck* m_check;
  InputForm* m_formatForm;
  QTableWidget* m_rows;
  SmallLabel* m_recognised;
  ColumnMapping* m_columns = nullptr;
  GridTurning* m_grid = nullptr;
  QLabel* m_status;
  SmallLabel* m_problem;
  QProgressBar* m_progress;
  QPushButton* m_stop;
  QPushButton* m_ok;
};

}  // namespace fettle::ui
