#pragma once
#include <fmt/format.h>

#include <functional>
#include <string>
#include <utility>

namespace fettle {

/// The one door for words that a person reads. Core writes English; the desktop program installs a
/// translator at start, and the translation tools find every `Text::tr("...")` under the context "Text".
struct Text {
  using Translator = std::function<std::string(const char* context, const char* source)>;

  /// Not thread-safe: called once, before the first sentence.
  static void setTranslator(Translator translator);
  static std::string tr(const char* source);
};

/// Fills the places {0}, {1}, ... of a translated sentence.
template <typename... Arguments>
std::string say(const std::string& sentence, Arguments&&... arguments) {
  return fmt::vformat(sentence, fmt::make_format_args(arguments...));
}

}  // namespace fettle
