#pragma once
#include <QWidget>
#include <vector>

#include "core/fields/field.h"
#include "core/intake/table_preview.h"
#include "core/measure/json.h"

class QGridLayout;

namespace fettle::ui {

class DropDown;

/// Which column of a text each wanted column comes from, and in which unit.
class ColumnMapping : public QWidget {
  Q_OBJECT
 public:
  /// For a capture or a table.
  explicit ColumnMapping(const Field& field, QWidget* parent = nullptr);
  /// Offers the columns of this text and shows what was recognised. What was found or chosen before stays
  /// when the text has as many columns as before, only read in another way.
  void show(const TablePreview& preview);
  /// Puts "columns" and "units" into a reference to a file.
  void describe(Json& reference) const;
  /// Labels of columns that are needed and not yet found.
  QStringList missing() const;

 signals:
  void changed();

 private:
  struct Line {
    DropDown* column;
    DropDown* unit;
    bool isChosen = false;  ///< by the user, "–" too
  };
  void addLine(QGridLayout& layout, const WantedColumn& wanted, bool isNeeded);
  void offerUnits(std::size_t line, const std::string& unit);

  std::vector<WantedColumn> m_wanted;
  std::vector<Line> m_lines;
  std::vector<ColumnHead> m_heads;
};

}  // namespace fettle::ui
