#include "core/intake/detect_format.h"

#include <algorithm>
#include <tuple>

#include "core/intake/format_trial.h"
#include "core/intake/text_encoding.h"

namespace fettle {
namespace {

constexpr std::size_t kHeadBytes = 96 * 1024;
constexpr std::size_t kHeadLines = 400;
constexpr std::size_t kOtherBytes = 8 * 1024;

/// Whole lines around a place in the text, without numbers.
void sampleAround(std::string_view text, std::size_t at, std::vector<SampleLine>& sample) {
  const char lineEnd = lineEndOf(text);
  const auto begin = text.find(lineEnd, at);
  const auto end =
      begin == text.npos ? text.npos : text.find(lineEnd, std::min(begin + kOtherBytes, text.size() - 1));
  if (begin == text.npos || end == text.npos || end <= begin + 1) {
    return;
  }
  LineReader lines(text.substr(begin + 1, end - begin - 1));
  while (const auto line = lines.next()) {
    sample.push_back({line->text, 0});
  }
}

/// Lines from the beginning, and from the middle and the end of long texts, where a logger may write
/// otherwise.
std::vector<SampleLine> sampleOf(std::string_view text, std::size_t skippedLines) {
  std::vector<SampleLine> sample;
  LineReader lines(text);
  std::size_t bytes = 0;
  while (const auto line = lines.next()) {
    if (line->number > skippedLines) {
      sample.push_back({line->text, line->number});
      bytes += line->text.size();
    }
    if (bytes > kHeadBytes || sample.size() >= kHeadLines) {
      break;
    }
  }
  if (lines.rest().size() > 4 * kOtherBytes) {
    sampleAround(lines.rest(), lines.rest().size() / 2, sample);
    sampleAround(lines.rest(), lines.rest().size() - 2 * kOtherBytes, sample);
  }
  return sample;
}

/// Whole numbers at the beginning say nothing about the decimal sign; then the rest of the text does.
char decimalSignOf(std::string_view text, const TextFormat& format) {
  const bool comma =
      format.delimiter != Delimiter::comma && text.find('.') == text.npos && text.find(',') != text.npos;
  return comma ? ',' : '.';
}

bool isBetter(const FormatTrial& a, const FormatTrial& b) {
  const auto rank = [](const FormatTrial& trial) {
    return std::tuple(trial.numbers, trial.usualRows, !trial.headerDisagrees, trial.format.columns.size());
  };
  return rank(a) > rank(b);
}

}  // namespace

Intake<TextFormat> detectFormat(std::string_view bytes, const FormatHints& hints) {
  const auto text = PlainText::from(bytes);
  if (!text) {
    return tl::unexpected(text.error());
  }
  const auto sample = sampleOf(text->view(), hints.skippedLines.value_or(0));
  const bool quoted = text->view().substr(0, kHeadBytes).find('"') != std::string_view::npos;
  std::optional<FormatTrial> best;
  for (const auto delimiter : {Delimiter::tab, Delimiter::semicolon, Delimiter::comma, Delimiter::blanks}) {
    for (const char sign : {'.', ','}) {
      const bool clash = delimiter == Delimiter::comma && sign == ',' && !quoted;
      if ((hints.delimiter && delimiter != *hints.delimiter) ||
          (hints.decimalSign && sign != *hints.decimalSign) || (clash && !hints.decimalSign)) {
        continue;
      }
      auto trial = tryFormat(sample, delimiter, sign, hints.skippedLines);
      if (trial && (!best || isBetter(*trial, *best))) {
        best = std::move(trial);
      }
    }
  }
  if (!best || best->numbers <= 0.0) {
    return refusal::noNumbers();
  }
  if (!hints.decimalSign && best->format.decimalSign == '.') {
    best->format.decimalSign = decimalSignOf(text->view(), best->format);
  }
  return best->format;
}

}  // namespace fettle
