#pragma once
#include <cstddef>
#include <string>

namespace fettle::bench {

/// An invented sweep as CSV text: time_s, ax, ay, az in s and mm/s²; 5 to 120 Hz, amplitude proportional to
/// frequency, through two modes (41.3 Hz, damping 0.06; 73 Hz, 0.05), with noise of a fixed seed.
std::string madeCapture(std::size_t rows, double sampleRate);

}  // namespace fettle::bench
