#pragma once
#include <QWidget>
#include <vector>

#include "core/intake/table_preview.h"
#include "core/measure/json.h"

class QComboBox;
class QGridLayout;

namespace fettle::ui {

/// Which column of a text each wanted column comes from, and in which unit.
class ColumnMapping : public QWidget {
  Q_OBJECT
 public:
  explicit ColumnMapping(std::vector<WantedColumn> wanted, QWidget* parent = nullptr);
  /// Offers the columns of this text and shows what was recognised.
  void show(const TablePreview& preview);
  /// Puts "columns" and "units" into a reference to a file.
  void describe(Json& reference) const;
  /// Labels of columns that are needed and not yet found.
  QStringList missing() const;

 signals:
  void changed();

 private:
  struct Line {
    QComboBox* column;
    QComboBox* unit;
  };
  void addLine(QGridLayout& layout, const WantedColumn& wanted, int row);
  void offerUnits(std::size_t line, const std::string& unit);

  std::vector<WantedColumn> m_wanted;
  std::vector<Line> m_lines;
  std::vector<ColumnHead> m_heads;
};

}  // namespace fettle::ui
