#include "core/intake/text_encoding.h"

#include <algorithm>
#include <cstdint>

namespace fettle {
namespace {

enum class ByteOrder { little, big };

constexpr std::size_t kLookedAt = 65536;
constexpr char32_t kReplacement = 0xFFFD;

unsigned char byteAt(std::string_view bytes, std::size_t i) {
  return static_cast<unsigned char>(bytes[i]);
}

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

std::string fromUtf16(std::string_view bytes, ByteOrder order) {
  const auto unit = [&](std::size_t i) {
    const auto a = static_cast<char32_t>(byteAt(bytes, i));
    const auto b = static_cast<char32_t>(byteAt(bytes, i + 1));
    return order == ByteOrder::little ? (b << 8 | a) : (a << 8 | b);
  };
  std::string out;
  out.reserve(bytes.size() / 2 + 16);
  for (std::size_t i = 0; i + 1 < bytes.size(); i += 2) {
    const char32_t first = unit(i);
    const bool isHigh = first >= 0xD800 && first < 0xDC00;
    const char32_t second = isHigh && i + 3 < bytes.size() ? unit(i + 2) : 0;
    if (second >= 0xDC00 && second < 0xE000) {
      appendUtf8(out, 0x10000 + ((first - 0xD800) << 10) + (second - 0xDC00));
      i += 2;
    } else {
      appendUtf8(out, first >= 0xD800 && first < 0xE000 ? kReplacement : first);
    }
  }
  return out;
}

/// Numbers in UTF-16 have a zero in every second byte.
bool looksLikeUtf16(std::string_view bytes, ByteOrder order) {
  const std::size_t pairs = std::min<std::size_t>(bytes.size() / 2, 128);
  std::size_t ascii = 0;
  for (std::size_t i = 0; i < pairs; ++i) {
    const auto low = byteAt(bytes, 2 * i + (order == ByteOrder::little ? 0 : 1));
    const auto high = byteAt(bytes, 2 * i + (order == ByteOrder::little ? 1 : 0));
    ascii += high == 0 && low != 0 ? 1U : 0U;
  }
  return pairs >= 2 && ascii * 10 >= pairs * 9;
}

bool isControl(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return (byte < 0x20 && c != '\t' && c != '\n' && c != '\r' && c != '\f' && c != '\v' && c != '\x1a') ||
         byte == 0x7F;
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

Intake<PlainText> PlainText::from(std::string_view bytes) {
  PlainText text;
  const auto convert = [&](std::string_view units, ByteOrder order) {
    text.m_converted = fromUtf16(units, order);
    text.m_isConverted = true;
  };
  if (bytes.starts_with("\xFF\xFE")) {
    convert(bytes.substr(2), ByteOrder::little);
  } else if (bytes.starts_with("\xFE\xFF")) {
    convert(bytes.substr(2), ByteOrder::big);
  } else if (looksLikeUtf16(bytes, ByteOrder::little)) {
    convert(bytes, ByteOrder::little);
  } else if (looksLikeUtf16(bytes, ByteOrder::big)) {
    convert(bytes, ByteOrder::big);
  } else {
    text.m_source = bytes.starts_with("\xEF\xBB\xBF") ? bytes.substr(3) : bytes;
  }
  if (!text.m_isConverted && text.m_source.ends_with('\x1a')) {
    text.m_source.remove_suffix(1);  // an end-of-file mark of old
  }
  const auto looked = text.view().substr(0, kLookedAt);
  if (std::any_of(looked.begin(), looked.end(), isControl)) {
    return refusal::notText();
  }
  if (text.view().find_first_not_of(" \t\r\n\f\v\x1a") == std::string_view::npos) {
    return refusal::empty();
  }
  return text;
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
    const bool control = length == 1 && (isControl(rest.front()) || rest.front() < ' ');
    out += control ? std::string_view(" ") : rest.substr(0, length);
    rest.remove_prefix(length);
    ++characters;
  }
  return isCut ? out + "\u2026" : out;
}

}  // namespace fettle
