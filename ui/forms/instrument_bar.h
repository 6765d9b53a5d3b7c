#pragma once
#include <QWidget>

#include "core/fields/field.h"
#include "ui/forms/form_context.h"

class QMenu;

namespace fettle::ui {

class FlowLayout;

/// Whether readings of this field carry the error of an instrument (a commanded value carries none).
bool isMeasured(const Field& field);
/// The instrument of a field: the one chosen in the inputs' "instruments", else that of its description.
Instrument instrumentOf(const Field& field, const Json& chosen);
/// Its name and its figures: "micrometer, ± 0.004 mm, reads to 0.001 mm".
QString instrumentWords(const Instrument& instrument);
/// The inputs' "instruments" with another choice for one column; the instrument of the description is
/// nothing to remember.
Json withInstrument(const Json& chosen, const Field& field, const Instrument& instrument);

/// Small buttons that tell what columns were read with and offer the other instruments of that unit.
/// Columns with the same unit and instrument share a button.
class InstrumentBar : public QWidget {
  Q_OBJECT
 public:
  InstrumentBar(const FormContext& context, QWidget* parent = nullptr);
  void show(const std::vector<Field>& fields, const Json& chosen);
  void setReadOnly(bool readOnly);
  /// One entry per instrument that could have been used; shared by the header's menu.
  void fillMenu(QMenu& menu, const std::vector<Field>& fields, const Json& chosen);

 protected:
  bool event(QEvent* event) override;

 signals:
  void chosen(const std::vector<fettle::Field>& fields, const fettle::Instrument& instrument);

 private:
  const FormContext& m_context;
  FlowLayout* m_layout;
  QString m_shown;  ///< what the buttons tell, so that nothing is rebuilt under a focused one
  bool m_readOnly = false;
};

}  // namespace fettle::ui
