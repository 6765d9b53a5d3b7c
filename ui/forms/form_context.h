#pragma once
#include <QDateTime>
#include <QString>
#include <QStringList>
#include <functional>
#include <vector>

#include "core/measure/instrument.h"

class QWidget;

namespace fettle::ui {

/// What all editors of a form share.
struct FormContext {
  std::vector<Instrument> instruments;  ///< to choose from
  QString initials;                     ///< of whoever ticks a checklist
  std::function<QDateTime()> now = [] { return QDateTime::currentDateTime(); };
  /// Asks for files; empty when the user thinks better of it.
  std::function<QStringList(QWidget* parent, const QString& title)> chooseFiles;
};

}  // namespace fettle::ui
