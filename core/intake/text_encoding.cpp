#include "core/intake/text_encoding.h"

#include <algorithm>
#include <cstdint>

#include "core/intake/utf8.h"

namespace fettle {
namespace {

enum class ByteOrder { little, big };

constexpr std::size_t kLookedAt = 65536;
constexpr char32_t kReplacement = 0xFFFD;

unsigned char byteAt(std::string_view bytes, std::size_t i) {
  return static_cast<unsigned char>(bytes[i]);
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
  if (std::any_of(looked.begin(), looked.end(), isControlCharacter)) {
    return refusal::notText();
  }
  if (text.view().find_first_not_of(" \t\r\n\f\v\x1a") == std::string_view::npos) {
    return refusal::empty();
  }
  return text;
}

}  // namespace fettle
