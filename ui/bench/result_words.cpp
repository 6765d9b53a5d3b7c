#include "ui/bench/result_words.h"

namespace fettle::ui {

QString unbroken(const std::string& value) {
  constexpr char16_t wordJoiner = 0x2060;
  return QString::fromStdString(value)
      .replace(QLatin1Char(' '), QChar(QChar::Nbsp))
      .replace(QLatin1Char('/'), QLatin1Char('/') + QString(QChar(wordJoiner)));
}

}  // namespace fettle::ui
