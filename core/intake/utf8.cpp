#include "core/intake/utf8.h"

#include <algorithm>

namespace fettle {
namespace {

unsigned char byteAt(std::string_view bytes, std::size_t i) {
  return static_cast<unsigned char>(bytes[i]);
}

/// The length of the UTF-8 character at the front, 0 if there is none (overlong forms and surrogates are
/// none).
std::size_t utf8Length(std::string_view text) {
  const auto lead = byteAt(text, 0);
  const std::size_t length = lead < 0x80                   ? 1
                             : lead >= 0xC2 && lead < 0xE0 ? 2
                             : (lead & 0xF0) == 0xE0       ? 3
                             : lead >= 0xF0 && lead < 0xF5 ? 4
                                                           : 0;
  if (length == 0 || length > text.size()) {
    return 0;
  }
  for (std::size_t i = 1; i < length; ++i) {
    if ((byteAt(text, i) & 0xC0) != 0x80) {
      return 0;
    }
  }
  const auto second = length > 2 ? byteAt(text, 1) : 0;
  const bool bad = (lead == 0xE0 && second < 0xA0) || (lead == 0xED && second >= 0xA0) ||
                   (lead == 0xF0 && second < 0x90) || (lead == 0xF4 && second >= 0x90);
  return bad ? 0 : length;
}

}  // namespace

void appendUtf8(std::string& out, char32_t c) {
  const auto put = [&](char32_t byte) { out += static_cast<char>(static_cast<unsigned char>(byte)); };
  if (c < 0x80) {
    put(c);
  } else if (c < 0x800) {
    put(0xC0 | (c >> 6));
    put(0x80 | (c & 0x3F));
  } else if (c < 0x10000) {
    put(0xE0 | (c >> 12));
    put(0x80 | ((c >> 6) & 0x3F));
    put(0x80 | (c & 0x3F));
  } else {
    put(0xF0 | (c >> 18));
    put(0x80 | ((c >> 12) & 0x3F));
    put(0x80 | ((c >> 6) & 0x3F));
    put(0x80 | (c & 0x3F));
  }
}

bool isControlCharacter(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return (byte < 0x20 && c != '\t' && c != '\n' && c != '\r' && c != '\f' && c != '\v' && c != '\x1a') ||
         byte == 0x7F;
}

std::string validUtf8(std::string_view text) {
  for (auto rest = text; !rest.empty();) {
    const std::size_t length = utf8Length(rest);
    if (length == 0) {
      std::string out;
      for (const char c : text) {
        appendUtf8(out, static_cast<unsigned char>(c));
      }
      return out;
    }
    rest.remove_prefix(length);
  }
  return std::string(text);
}

std::string shownText(std::string_view text) {
  constexpr std::size_t kLongest = 40;
  // The cut comes first so that a sentence about a megabyte of rubbish stays cheap.
  const bool isCut = text.size() > 4 * kLongest;
  text = text.substr(0, 4 * kLongest);
  while (isCut && !text.empty() && byteAt(text, text.size() - 1) >= 0x80) {
    text.remove_suffix(1);  // perhaps half a character
  }
  const std::string valid = validUtf8(text);
  std::string out;
  std::size_t characters = 0;
  for (std::string_view rest = valid; !rest.empty();) {
    if (characters == kLongest) {
      return out + "\u2026";
    }
    const std::size_t length = std::max<std::size_t>(utf8Length(rest), 1);
    const bool control = length == 1 && (isControlCharacter(rest.front()) || rest.front() < ' ');
    out += control ? std::string_view(" ") : rest.substr(0, length);
    rest.remove_prefix(length);
    ++characters;
  }
  return isCut ? out + "\u2026" : out;
}

}  // namespace fettle
