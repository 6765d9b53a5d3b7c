#include <QTest>
#include <cmath>
#include <numbers>

#include "core/maths/fundamental.h"
#include "tests/support/near.h"
#include "tests/support/plucked_belt.h"
#include "tests/support/test_main.h"

using namespace fettle::maths;
using namespace fettle::tests;

namespace {

Expected<Pitch> pitchOf(const PluckedBelt& belt, PitchSettings settings = {}) {
  settings.sampleRate = belt.rate;
  return findPitch(soundOf(belt), settings);
}

/// The known frequency is met within twice the uncertainty, which is that of one bin.
void verifyPitch(const PluckedBelt& belt) {
  const auto pitch = pitchOf(belt);
  QVERIFY2(pitch, pitch ? "" : pitch.error().c_str());
  const QByteArray found = QByteArray::number(pitch->frequency, 'f', 3) + " ± " +
                           QByteArray::number(pitch->u, 'f', 3) + " Hz of " +
                           QByteArray::number(belt.frequency, 'f', 3);
  QVERIFY2(std::abs(pitch->frequency - belt.frequency) <= 2 * pitch->u, found.constData());
}

}  // namespace

/// Tones are made here with a frequency that is known: what was put in must come out.
class TestFundamental : public QObject {
  Q_OBJECT

 private slots:
  void manyFrequenciesBetweenTheBins() {
    for (double frequency = 41.3; frequency < 260; frequency *= 1.137) {
      for (const unsigned seed : {1U, 2U}) {
        PluckedBelt belt;
        belt.frequency = frequency;
        belt.seed = seed;
        verifyPitch(belt);
      }
    }
  }

  // 8000 samples a second: the segment of 0.75 s is taken to 4096 samples, a bin is 1.953 Hz.
  void theUncertaintyIsThatOfABin() {
    const auto pitch = pitchOf({});
    VERIFY_NEAR(pitch->u, 8000 / 4096.0 / std::sqrt(12.0), 1e-12);
    QVERIFY(pitch->fundamentalHeard);
    QCOMPARE(pitch->harmonics.size(), std::size_t(3));
    QCOMPARE(pitch->harmonics[2].order, 3);
  }

  // A steady tone without noise in one Hann segment: the parabola of logarithms is within 0.03 bins.
  void interpolationIsFinerThanTheBin() {
    for (int part = 0; part < 10; ++part) {
      const double bin = 8000 / 4096.0, frequency = (60 + 0.1 * part) * bin;
      std::vector<double> samples;
      for (int i = 0; i < 4096; ++i) {
        samples.push_back(std::sin(2 * std::numbers::pi * frequency * i / 8000));
      }
      PitchSettings settings;
      settings.sampleRate = 8000;
      const auto pitch = findPitch(samples, settings);
      QVERIFY2(pitch, pitch ? "" : pitch.error().c_str());
      QVERIFY2(std::abs(pitch->frequency - frequency) < 0.03 * bin, QByteArray::number(pitch->frequency));
    }
  }

  void theLoudestHarmonicIsNotTheFundamental() {
    for (const auto& amplitudes :
         {std::vector<double>{0.1, 1, 0.3}, std::vector<double>{0.1, 0.2, 1}, std::vector<double>{0.1, 1},
          std::vector<double>{0.15, 0.3, 1, 0.5, 0.2}}) {
      PluckedBelt belt;
      belt.amplitudes = amplitudes;
      belt.frequency = 87.6;
      verifyPitch(belt);
    }
  }

  // Plucked in the middle a string has odd harmonics only.
  void oddHarmonicsAlone() {
    PluckedBelt belt;
    belt.amplitudes = {1, 0, 0.4, 0, 0.2};
    belt.frequency = 132.4;
    verifyPitch(belt);
  }

  void aSilentFundamentalFollowsFromItsHarmonics() {
    for (const auto& amplitudes : {std::vector<double>{0, 1, 0.8, 0.5}, std::vector<double>{0, 1, 1},
                                   std::vector<double>{0, 0, 1, 0.8, 0.5}}) {
      PluckedBelt belt;
      belt.amplitudes = amplitudes;
      belt.frequency = 95.2;
      verifyPitch(belt);
      QVERIFY(!pitchOf(belt)->fundamentalHeard);
    }
  }

  void oneLineAloneIsTheFundamental() {
    PluckedBelt belt;
    belt.amplitudes = {1};
    verifyPitch(belt);
    QVERIFY(!pitchOf(belt)->rival);
  }

  // An octave below explains the same lines by its even orders only: no other explanation, no doubt.
  void theOctaveBelowIsNoRival() {
    for (const auto& amplitudes : {std::vector<double>{0, 1, 0.8, 0.6}, std::vector<double>{1, 0, 0.5},
                                   std::vector<double>{1, 0.5}}) {
      PluckedBelt belt;
      belt.amplitudes = amplitudes;
      belt.frequency = 87.2;
      verifyPitch(belt);
      const auto rival = pitchOf(belt)->rival;
      QVERIFY2(!rival, rival ? QByteArray::number(*rival).constData() : "");
    }
  }

  void stiffnessRaisesTheHarmonicsOnly() {
    PluckedBelt belt;
    belt.stiffness = 0.001;
    belt.amplitudes = {1, 0.7, 0.5, 0.4};
    verifyPitch(belt);
    QCOMPARE(pitchOf(belt)->harmonics.size(), std::size_t(4));
  }

  void steadyHumDoesNotCount() {
    PluckedBelt belt;
    belt.hum = 1;
    belt.frequency = 113.7;
    verifyPitch(belt);
  }

  void muchNoise() {
    for (unsigned seed = 1; seed <= 10; ++seed) {
      PluckedBelt belt;
      belt.noise = 0.05;
      belt.frequency = 78.9;
      belt.seed = seed;
      verifyPitch(belt);
    }
  }

  void noiseAloneIsNoTone() {
    for (unsigned seed = 1; seed <= 60; ++seed) {
      PluckedBelt belt;
      belt.amplitudes = {};
      belt.plucks = 1 + static_cast<int>(seed % 4);
      belt.seed = seed;
      const auto pitch = pitchOf(belt);
      QVERIFY2(!pitch, pitch ? QByteArray::number(pitch->frequency).constData() : "");
    }
  }

  // Two belts at once, 100 and 141 Hz: neither explains the lines of the other.
  void twoTonesAtOnceAreUnclear() {
    PluckedBelt belt;
    auto samples = soundOf(belt);
    belt.frequency = 141;
    belt.seed = 2;
    const auto other = soundOf(belt);
    for (std::size_t i = 0; i < samples.size(); ++i) {
      samples[i] += other[i];
    }
    PitchSettings settings;
    settings.sampleRate = belt.rate;
    const auto pitch = findPitch(samples, settings);
    QVERIFY(pitch && pitch->rival);
  }

  void unusableInputsFail() {
    const std::vector<double> silence(8000, 0.0);
    PitchSettings settings;
    settings.sampleRate = 8000;
    QVERIFY(!findPitch(silence, settings));
    QVERIFY(!findPitch({}, settings));
    QVERIFY(!findPitch(std::vector<double>(3199, 0.1), settings));  // 8 periods of 20 Hz are 3200 samples
    auto holed = silence;
    holed[17] = std::nan("");
    QVERIFY(!findPitch(holed, settings));
    settings.highest = 4001;
    QVERIFY(!findPitch(silence, settings));
    settings.highest = 10;
    QVERIFY(!findPitch(silence, settings));
    settings.sampleRate = 0;
    QVERIFY(!findPitch(silence, settings));
  }
};

FETTLE_TEST(TestFundamental)
#include "test_fundamental.moc"
