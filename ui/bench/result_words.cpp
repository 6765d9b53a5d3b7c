#include "ui/bench/result_words.h"

namespace fettle::ui {

QString unbroken(const std::string& value) {
  constexpr char16_t wordJoiner = 0x2060;
  return QString::fromStdString(value)
      .replace(QStringLiteral(" ± "), QStringLiteral("\u00a0±\u00a0"))
      .replace(QStringLiteral(" … "), QStringLiteral("\u00a0…\u00a0"))
      .replace(QLatin1Char('/'), QLatin1Char('/') + QString(QChar(wordJoiner)));
}

}  // namespace fettle::ui
