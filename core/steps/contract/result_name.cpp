#include "core/steps/contract/result_name.h"

namespace fettle {

std::string resultName(const std::string& words) {
  std::string name;
  for (const char letter : words) {
    const auto byte = static_cast<unsigned char>(letter);
    if (byte >= 'A' && byte <= 'Z') {
      name += static_cast<char>(byte - 'A' + 'a');
    } else if ((byte >= 'a' && byte <= 'z') || (byte >= '0' && byte <= '9')) {
      name += letter;
    } else if ((byte & 0xC0U) != 0x80U) {  // one underscore for one character, whatever its bytes
      name += '_';
    }
  }
  return name;
}

std::string DistinctNames::next(const std::string& words) {
  const std::string name = resultName(words);
  const int times = ++m_used[name];
  if (times == 1) {
    return name;
  }
  // "frame_2" may have been typed as well.
  return next(name + "_" + std::to_string(times));
}

}  // namespace fettle
