#pragma once
#include <string_view>
#include <vector>

#include "core/intake/intake_error.h"
#include "core/measure/capture.h"

namespace fettle {

/// Whether bytes begin as a RIFF/WAVE file, sound or faulty.
bool isSoundFile(std::string_view bytes);

/// A WAVE file of sound to a capture with columns `time_s`, from 0, and `level`, full scale 1; two channels
/// are averaged, and of two that cancel each other the louder one counts. Read are PCM of 16, 24 and 32
/// bits and IEEE float of 32 bits, one or two channels, plainly or extensibly described (IBM and Microsoft
/// 1991, Multimedia Programming Interface and Data Specifications 1.0; WAVEFORMATEXTENSIBLE). Refused with
/// one sentence: anything else, files that end early, half frames, fewer than two frames, samples that are
/// no number, more than ten minutes. Name and hash are left to the caller.
Intake<Capture> readSoundFile(std::string_view bytes);

/// What a person recognises a recording by.
struct SoundPreview {
  std::size_t channels = 0;
  double rate = 0, seconds = 0;
  double loudest = 0, loudestAt = 0;  ///< of full scale 1; s
  std::vector<double> levels;         ///< the first ones
};

/// Reads and refuses what readSoundFile does, but keeps only the first `rows` levels.
Intake<SoundPreview> previewSound(std::string_view bytes, std::size_t rows = 12);

}  // namespace fettle
