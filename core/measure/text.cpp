#include "core/measure/text.h"

namespace fettle {
namespace {

Text::Translator& installed() {
  static Text::Translator translator;
  return translator;
}

}  // namespace

void Text::setTranslator(Translator translator) {
  installed() = std::move(translator);
}

std::string Text::tr(const char* source) {
  return installed() ? installed()("Text", source) : source;
}

}  // namespace fettle
