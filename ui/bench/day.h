#pragma once
#include <QDateTime>
#include <QLocale>
#include <string>

namespace fettle::ui {

/// "18 Nov 2026" of an ISO date or date and time; what is none as it stands.
inline QString dayInWords(const std::string& date) {
  const QDate day = QDateTime::fromString(QString::fromStdString(date), Qt::ISODate).date();
  return day.isValid() ? QLocale(QLocale::English).toString(day, "d MMM yyyy")
                       : QString::fromStdString(date);
}

}  // namespace fettle::ui
