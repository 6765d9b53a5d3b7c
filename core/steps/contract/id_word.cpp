#include "core/steps/contract/id_word.h"

namespace fettle {

std::string idWord(const std::string& name) {
  std::string word;
  for (const char letter : name) {
    const auto byte = static_cast<unsigned char>(letter);
    if (byte >= 'A' && byte <= 'Z') {
      word += static_cast<char>(byte - 'A' + 'a');
    } else if ((byte >= 'a' && byte <= 'z') || (byte >= '0' && byte <= '9')) {
      word += letter;
    } else if ((byte & 0xC0U) != 0x80U) {  // one underscore for one character, whatever its bytes
      word += '_';
    }
  }
  return word;
}

}  // namespace fettle
