#pragma once
#include <QString>
#include <string>

#include "core/measure/json.h"

namespace fettle::ui {

/// A place in the inputs of a step: "margin", or "marks[2].nozzle_x" with rows counted from 1, as
/// FieldReader names it.
struct InputPath {
  std::string key;
  int row = 0;         ///< from 1; 0 where there is no row
  std::string column;  ///< of that row
  QString text() const;
  static InputPath fromText(const QString& text);
};

/// The whole new value of the top-level key when the value at `path` is replaced. Rows that are not yet
/// there are added; what is no table becomes one.
Json withValueAt(const Json& inputs, const InputPath& path, const Json& value);

}  // namespace fettle::ui
