#pragma once
#include <QDialog>

#include "core/history/settings_in_force.h"
#include "ui/editing/document.h"

class QTableWidget;

namespace fettle::ui {

/// "To enter at the machine": the settings adopted in the session, with name, value and unit, to copy as
/// text or CSV, and to print.
class SettingsPage : public QDialog {
  Q_OBJECT
 public:
  SettingsPage(const Document& document, QWidget* parent = nullptr);

 private:
  void print();
  void saveCsv();
  std::vector<SettingInForce> m_settings;
  QString m_machine;
  QTableWidget* m_table;
};

/// The same as text, one setting a line, and as CSV.
QString settingsAsText(const std::vector<SettingInForce>& settings);
QString settingsAsCsv(const std::vector<SettingInForce>& settings);

}  // namespace fettle::ui
