#pragma once
#include <QWidget>

#include "core/measure/json.h"

class QPushButton;

namespace fettle::ui {

class SmallLabel;

/// Stands in place of a table or grid whose values come from a file, and offers to type them instead.
class FileLine : public QWidget {
  Q_OBJECT
 public:
  explicit FileLine(const QString& name, QWidget* parent = nullptr);
  /// Shows itself when the value is a reference to a file. @return whether it is
  bool show(const Json& value);

 signals:
  void typeInstead();

 private:
  SmallLabel* m_text;
};

}  // namespace fettle::ui
