#pragma once
#include "core/fields/field.h"
#include "ui/forms/drop_down.h"

namespace fettle::ui {

/// A list of the choices of a field. Where nothing counts while blank there is an entry for "not chosen".
class ChoiceBox : public DropDown {
  Q_OBJECT
 public:
  explicit ChoiceBox(const Field& field, QWidget* parent = nullptr);
  /// Shows a value, what counts while blank for null; emits nothing.
  void showValue(const Json& value);
  Json chosen() const;

 signals:
  void chosenByUser();

 private:
  Json m_fallback;
};

}  // namespace fettle::ui
