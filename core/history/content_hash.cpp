#include <fmt/format.h>
#include <openssl/evp.h>

#include <array>
#include <stdexcept>

#include "core/history/evaluation.h"

namespace fettle {

std::string sha256(std::string_view bytes) {
  std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
  unsigned int length = 0;
  if (EVP_Digest(bytes.data(), bytes.size(), digest.data(), &length, EVP_sha256(), nullptr) != 1) {
    throw std::runtime_error("the crypto library has no SHA-256");
  }
  std::string text;
  for (unsigned int i = 0; i < length; ++i) {
    text += fmt::format("{:02x}", digest[i]);
  }
  return text;
}

}  // namespace fettle
