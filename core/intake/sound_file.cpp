#include "core/intake/sound_file.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/measure/format.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

constexpr std::size_t riffHead = 12, chunkHead = 8;
constexpr std::size_t plainFormat = 16, extensibleFormat = 40, subFormatAt = 24;
constexpr unsigned pcm = 1, ieeeFloat = 3, extensible = 0xFFFE;
// What follows the two bytes of the format in the GUID of an extensible description.
constexpr std::string_view guidTail("\x00\x00\x00\x00\x10\x00\x80\x00\x00\xaa\x00\x38\x9b\x71", 14);
constexpr double longest = 600;  // s; a pluck is over in one
constexpr std::uint32_t slowest = 1000, fastest = 384000;

refusal::Error refuse(std::string sentence) {
  return refusal::Error(IntakeError{std::move(sentence)});
}

/// Little-endian whole number of up to four bytes.
std::uint32_t numberAt(std::string_view bytes, std::size_t at, std::size_t size) {
  std::uint32_t number = 0;
  for (std::size_t i = size; i-- > 0;) {
    number = number << 8 | static_cast<unsigned char>(bytes[at + i]);
  }
  return number;
}

struct Format {
  unsigned tag = 0;
  std::size_t channels = 0, bits = 0, frame = 0;  ///< frame: bytes of all channels of one moment
  std::uint32_t rate = 0;
};

struct Chunks {
  std::optional<std::string_view> format, data;
};

Intake<Chunks> chunksOf(std::string_view bytes) {
  Chunks chunks;
  std::size_t at = riffHead;
  while (at + chunkHead <= bytes.size() && !(chunks.format && chunks.data)) {
    const std::string_view name = bytes.substr(at, 4);
    const std::size_t size = numberAt(bytes, at + 4, 4);
    at += chunkHead;
    if (size > bytes.size() - at) {
      return refuse(
          say(Text::tr("The sound file ends early: a part announces {0} bytes and has {1}; copy or "
                       "record it again."),
              size, bytes.size() - at));
    }
    if (name == "fmt ") {
      chunks.format = bytes.substr(at, size);
    } else if (name == "data") {
      chunks.data = bytes.substr(at, size);
    }
    at += size + size % 2;  // parts begin at even places
    at = std::min(at, bytes.size());
  }
  if (!chunks.format) {
    return refuse(
        Text::tr("The sound file does not describe its format (no \"fmt \" part); record it again as "
                 "a WAVE file of 16 or 24 bits."));
  }
  if (!chunks.data) {
    return refuse(Text::tr("The sound file holds no samples (no \"data\" part); record it again."));
  }
  return chunks;
}

Intake<Format> formatOf(std::string_view part) {
  if (part.size() < plainFormat) {
    return refuse(say(Text::tr("The sound file's description has {0} bytes; at least {1} are needed."),
                      part.size(), plainFormat));
  }
  Format format;
  format.tag = numberAt(part, 0, 2);
  format.channels = numberAt(part, 2, 2);
  format.rate = numberAt(part, 4, 4);
  format.frame = numberAt(part, 12, 2);
  format.bits = numberAt(part, 14, 2);
  if (format.tag == extensible) {
    if (part.size() < extensibleFormat || part.substr(subFormatAt + 2, guidTail.size()) != guidTail) {
      return refuse(
          Text::tr("The sound file's extended description is damaged or of an unknown kind; save it "
                   "as PCM of 16 or 24 bits."));
    }
    format.tag = numberAt(part, subFormatAt, 2);
  }
  return format;
}

std::optional<std::string> problemOf(const Format& format) {
  if (format.tag != pcm && format.tag != ieeeFloat) {
    return say(
        Text::tr("The sound file is compressed or of an unknown kind (format {0}); save it as PCM of 16 "
                 "or 24 bits or as float of 32 bits."),
        format.tag);
  }
  const bool known = format.bits == 32 || (format.tag == pcm && (format.bits == 16 || format.bits == 24));
  if (!known) {
    return say(
        Text::tr("The sound file has samples of {0} bits; whole numbers of 16, 24 or 32 bits or float of "
                 "32 bits are read."),
        format.bits);
  }
  if (format.channels != 1 && format.channels != 2) {
    return say(Text::tr("The sound file has {0} channels; one or two are read."), format.channels);
  }
  if (format.rate < slowest || format.rate > fastest) {
    return say(Text::tr("The sound file names a rate of {0} samples a second; {1} to {2} are read."),
               format.rate, slowest, fastest);
  }
  if (format.frame != format.channels * format.bits / 8) {
    return say(
        Text::tr("The sound file contradicts itself: {0} channels of {1} bits take {2} bytes, it says "
                 "{3}."),
        format.channels, format.bits, format.channels * format.bits / 8, format.frame);
  }
  return std::nullopt;
}

std::optional<std::string> problemOf(const Format& format, std::size_t size) {
  const std::size_t frames = size / format.frame;
  if (size % format.frame != 0) {
    return say(
        Text::tr("The sound file ends in the middle of a sample: {0} bytes are no whole number of {1}."),
        size, format.frame);
  }
  if (frames < 2) {
    return say(Text::tr("The sound file holds {0} samples; two or more are needed."), frames);
  }
  const double seconds = static_cast<double>(frames) / format.rate;
  if (seconds > longest) {
    return say(Text::tr("The recording is {0} s long; {1} s at most are read. Cut it to the plucks."),
               formatFixed(seconds, 0), formatFixed(longest, 0));
  }
  return std::nullopt;
}

/// One sample, full scale 1.
double sampleAt(std::string_view data, std::size_t at, const Format& format) {
  const std::size_t bytes = format.bits / 8;
  const std::uint32_t word = numberAt(data, at, bytes);
  if (format.tag == ieeeFloat) {
    return static_cast<double>(std::bit_cast<float>(word));
  }
  const auto full = static_cast<std::int32_t>(word << (32 - format.bits));  // sign at the top
  return static_cast<double>(full) / 2147483648.0;
}

/// The mean of the channels; of two that cancel each other (one with its sign turned) the louder one.
std::vector<double> levelOf(const std::vector<std::vector<double>>& channels) {
  if (channels.size() == 1) {
    return channels.front();
  }
  // Of the louder one's power. Equal channels keep all of it and a channel beside silence keeps a quarter;
  // below a tenth both have sound and most of it is lost in the mean (10 dB; common practice, no source).
  constexpr double cancelled = 0.1;
  const auto& first = channels[0];
  const auto& second = channels[1];
  std::vector<double> mean(first.size());
  double power = 0, powerOfFirst = 0, powerOfSecond = 0;
  for (std::size_t i = 0; i < first.size(); ++i) {
    mean[i] = (first[i] + second[i]) / 2;
    power += mean[i] * mean[i];
    powerOfFirst += first[i] * first[i];
    powerOfSecond += second[i] * second[i];
  }
  if (power >= cancelled * std::max(powerOfFirst, powerOfSecond)) {
    return mean;
  }
  return powerOfFirst >= powerOfSecond ? first : second;
}

/// The samples of a file that can be read.
struct Sound {
  Format format;
  std::string_view data;

  std::size_t frames() const { return data.size() / format.frame; }
  double timeOf(std::size_t frame) const { return static_cast<double>(frame) / format.rate; }
};

Intake<Sound> soundOf(std::string_view bytes) {
  if (!isSoundFile(bytes)) {
    return refuse(Text::tr("This is not a WAVE sound file; record or save as WAVE, PCM of 16 or 24 bits."));
  }
  if (bytes.substr(0, 4) != "RIFF") {
    return refuse(say(Text::tr("The sound file is of the kind {0}; save it as a plain WAVE file (RIFF)."),
                      bytes.substr(0, 4)));
  }
  const auto chunks = chunksOf(bytes);
  if (!chunks) {
    return tl::unexpected(chunks.error());
  }
  const auto format = formatOf(*chunks->format);
  if (!format) {
    return tl::unexpected(format.error());
  }
  if (const auto problem = problemOf(*format)) {
    return refuse(*problem);
  }
  if (const auto problem = problemOf(*format, chunks->data->size())) {
    return refuse(*problem);
  }
  return Sound{*format, *chunks->data};
}

Intake<std::vector<double>> levelsOf(const Sound& sound) {
  const Format& format = sound.format;
  std::vector<std::vector<double>> channels(format.channels, std::vector<double>(sound.frames()));
  for (std::size_t i = 0; i < sound.frames(); ++i) {
    for (std::size_t channel = 0; channel < format.channels; ++channel) {
      const double sample = sampleAt(sound.data, i * format.frame + channel * format.bits / 8, format);
      if (!std::isfinite(sample)) {
        return refuse(say(Text::tr("Sample {0} of the sound file is no number; record it again."), i + 1));
      }
      channels[channel][i] = sample;
    }
  }
  return levelOf(channels);
}

}  // namespace

bool isSoundFile(std::string_view bytes) {
  const std::string_view kind = bytes.substr(0, 4);
  return bytes.size() >= riffHead && (kind == "RIFF" || kind == "RIFX" || kind == "RF64") &&
         bytes.substr(8, 4) == "WAVE";
}

Intake<Capture> readSoundFile(std::string_view bytes) {
  const auto sound = soundOf(bytes);
  if (!sound) {
    return tl::unexpected(sound.error());
  }
  auto levels = levelsOf(*sound);
  if (!levels) {
    return tl::unexpected(levels.error());
  }
  Capture capture;
  auto& time = capture.columns["time_s"];
  time.reserve(sound->frames());
  for (std::size_t i = 0; i < sound->frames(); ++i) {
    time.push_back(sound->timeOf(i));
  }
  capture.columns["level"] = std::move(*levels);
  return capture;
}

Intake<SoundPreview> previewSound(std::string_view bytes, std::size_t rows) {
  const auto sound = soundOf(bytes);
  if (!sound) {
    return tl::unexpected(sound.error());
  }
  const auto levels = levelsOf(*sound);
  if (!levels) {
    return tl::unexpected(levels.error());
  }
  SoundPreview preview;
  preview.channels = sound->format.channels;
  preview.rate = sound->format.rate;
  preview.seconds = sound->timeOf(sound->frames());
  preview.levels.assign(levels->begin(),
                        levels->begin() + static_cast<std::ptrdiff_t>(std::min(rows, levels->size())));
  for (std::size_t i = 0; i < levels->size(); ++i) {
    if (std::abs((*levels)[i]) > preview.loudest) {
      preview.loudest = std::abs((*levels)[i]);
      preview.loudestAt = sound->timeOf(i);
    }
  }
  return preview;
}

}  // namespace fettle
