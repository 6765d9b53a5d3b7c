#pragma once
#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

namespace fettle::tests {

/// A WAVE file put together byte by byte, so that any part can be made wrong.
struct WaveFile {
  unsigned tag = 1;  ///< 1 whole numbers, 3 float
  unsigned channels = 1, bits = 16;
  unsigned rate = 8000;
  bool extensible = false;
  std::vector<std::vector<double>> samples;  ///< one list a channel, full scale 1
  std::string before;                        ///< parts put between the head and the format

  static std::string little(std::uint32_t number, int size) {
    std::string bytes;
    for (int i = 0; i < size; ++i) {
      bytes += static_cast<char>(number >> (8 * i) & 0xFFU);
    }
    return bytes;
  }
  static std::string part(const std::string& name, const std::string& content) {
    return name + little(static_cast<std::uint32_t>(content.size()), 4) + content +
           (content.size() % 2 == 1 ? std::string(1, '\0') : std::string());
  }
  std::string format() const {
    std::string content = little(extensible ? 0xFFFE : tag, 2) + little(channels, 2) + little(rate, 4) +
                          little(rate * channels * bits / 8, 4) + little(channels * bits / 8, 2) +
                          little(bits, 2);
    if (extensible) {
      content += little(22, 2) + little(bits, 2) + little(channels == 2 ? 3 : 4, 4) + little(tag, 2) +
                 std::string("\x00\x00\x00\x00\x10\x00\x80\x00\x00\xaa\x00\x38\x9b\x71", 14);
    }
    return content;
  }
  std::string word(double value) const {
    if (tag == 3) {
      return little(std::bit_cast<std::uint32_t>(static_cast<float>(value)), 4);
    }
    const double full = std::ldexp(1.0, static_cast<int>(bits) - 1);
    const double whole = std::clamp(std::round(value * full), -full, full - 1);
    return little(static_cast<std::uint32_t>(static_cast<std::int32_t>(whole)), static_cast<int>(bits / 8));
  }
  std::string data() const {
    std::string content;
    for (std::size_t i = 0; i < samples.at(0).size(); ++i) {
      for (const auto& channel : samples) {
        content += word(channel[i]);
      }
    }
    return content;
  }
  static std::string whole(const std::string& parts, const std::string& kind = "RIFF") {
    return kind + little(static_cast<std::uint32_t>(parts.size() + 4), 4) + "WAVE" + parts;
  }
  std::string bytes() const { return whole(before + part("fmt ", format()) + part("data", data())); }
};

}  // namespace fettle::tests
