#include <QTest>
#include <cmath>
#include <limits>

#include "core/intake/sound_file.h"
#include "tests/support/test_main.h"
#include "tests/support/wave_file.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// Values that 16 bits hold exactly.
const std::vector<double> exact{0, 0.5, -0.5, 0.25, -1, 1 - 1.0 / 32768, 1.0 / 32768};

WaveFile mono(unsigned tag, unsigned bits, bool extensible) {
  WaveFile file;
  file.tag = tag;
  file.bits = bits;
  file.extensible = extensible;
  file.samples = {exact};
  return file;
}

QString refusalOf(const std::string& bytes) {
  const auto read = readSoundFile(bytes);
  return read ? QString() : QString::fromStdString(read.error().sentence);
}

void verifyRefused(const std::string& bytes, const char* word) {
  const QString sentence = refusalOf(bytes);
  QVERIFY2(sentence.contains(word), (sentence + " | wanted: " + word).toUtf8().constData());
  QVERIFY2(sentence.endsWith('.') && !sentence.contains('\n'), sentence.toUtf8().constData());
}

}  // namespace

/// The files are made here, byte by byte, after the published description of the format.
class TestSoundFile : public QObject {
  Q_OBJECT

 private slots:
  void everyFormatGivesItsSamples_data() {
    QTest::addColumn<unsigned>("tag");
    QTest::addColumn<unsigned>("bits");
    for (const bool extensible : {false, true}) {
      const char* kind = extensible ? "extensible" : "plain";
      QTest::addRow("16 bits, %s", kind) << 1U << 16U;
      QTest::addRow("24 bits, %s", kind) << 1U << 24U;
      QTest::addRow("32 bits, %s", kind) << 1U << 32U;
      QTest::addRow("float, %s", kind) << 3U << 32U;
    }
  }

  void everyFormatGivesItsSamples() {
    QFETCH(unsigned, tag);
    QFETCH(unsigned, bits);
    const bool extensible = QByteArray(QTest::currentDataTag()).endsWith("extensible");
    const auto read = readSoundFile(mono(tag, bits, extensible).bytes());
    QVERIFY2(read, read ? "" : read.error().sentence.c_str());
    QCOMPARE(read->columns.size(), std::size_t(2));
    QCOMPARE(read->column("level"), exact);
    QCOMPARE(read->column("time_s").front(), 0.0);
    QCOMPARE(read->column("time_s").back(), 6 / 8000.0);
  }

  void twentyFourBitsAreFinerThanSixteen() {
    WaveFile file = mono(1, 24, false);
    file.samples = {{std::ldexp(1.0, -23), -std::ldexp(1.0, -23), -1}};
    const auto read = readSoundFile(file.bytes());
    QCOMPARE(read->column("level"), file.samples[0]);
  }

  void twoChannelsAreAveraged() {
    for (const auto& [tag, bits] : {std::pair{1U, 16U}, {1U, 24U}, {3U, 32U}}) {
      WaveFile file = mono(tag, bits, false);
      file.channels = 2;
      file.samples = {{0.5, -0.25, 0}, {0.25, 0.25, -1}};
      const auto read = readSoundFile(file.bytes());
      QVERIFY2(read, read ? "" : read.error().sentence.c_str());
      QCOMPARE(read->column("level"), (std::vector<double>{0.375, 0, -0.5}));
    }
  }

  // Two channels of which one has its sign turned are silent in the mean; the louder one is heard.
  void channelsThatCancelLeaveTheLouder() {
    WaveFile file = mono(3, 32, false);
    file.channels = 2;
    file.samples = {{0.5, -0.25, 0.125}, {-0.25, 0.125, -0.0625}};
    QCOMPARE(readSoundFile(file.bytes())->column("level"), file.samples[0]);
    std::swap(file.samples[0], file.samples[1]);
    QCOMPARE(readSoundFile(file.bytes())->column("level"), file.samples[1]);
  }

  // Parts of other names, one of odd length, which is followed by a byte that does not count; bytes behind
  // the samples.
  void otherPartsAreSkipped() {
    WaveFile file = mono(1, 16, false);
    file.before = WaveFile::part("LIST", "odd") + WaveFile::part("bext", "even");
    const auto read = readSoundFile(file.bytes() + WaveFile::part("cue ", "more") + "rest");
    QVERIFY2(read, read ? "" : read.error().sentence.c_str());
    QCOMPARE(read->column("level"), exact);
  }

  void beginningsAreRecognised() {
    QVERIFY(isSoundFile(mono(1, 16, false).bytes()));
    QVERIFY(isSoundFile(mono(1, 16, false).bytes().substr(0, 12)));
    QVERIFY(!isSoundFile("RIFF....AVI fmt "));
    QVERIFY(!isSoundFile("RIFF"));
    QVERIFY(!isSoundFile("time_s,level\n0,0\n"));
    QVERIFY(!isSoundFile(""));
  }

  void filesThatEndEarlyAreRefused() {
    const std::string good = mono(1, 16, false).bytes();
    verifyRefused("", "not a WAVE");
    verifyRefused(good.substr(0, 12), "format");
    verifyRefused(good.substr(0, 30), "ends early");
    verifyRefused(good.substr(0, 36), "no samples");
    verifyRefused(good.substr(0, good.size() - 1), "ends early");
    for (std::size_t size = 0; size < good.size(); ++size) {
      QVERIFY2(!refusalOf(good.substr(0, size)).isEmpty(), QByteArray::number(static_cast<int>(size)));
    }
  }

  void otherKindsAreRefused() {
    const std::string good = mono(1, 16, false).bytes();
    verifyRefused("RIFX" + good.substr(4), "RIFX");
    verifyRefused("RF64" + good.substr(4), "RF64");
    verifyRefused(mono(7, 16, false).bytes(), "compressed");
    verifyRefused(mono(1, 8, false).bytes(), "8 bits");
    WaveFile three = mono(1, 16, false);
    three.channels = 3;
    three.samples = {exact, exact, exact};
    verifyRefused(three.bytes(), "3 channels");
    WaveFile none = three;
    none.channels = 0;
    verifyRefused(none.bytes(), "0 channels");
    WaveFile still = mono(1, 16, false);
    still.rate = 0;
    verifyRefused(still.bytes(), "rate of 0");
  }

  void damagedDescriptionsAreRefused() {
    const WaveFile file = mono(1, 16, false);
    const std::string data = WaveFile::part("data", file.data());
    verifyRefused(WaveFile::whole(data), "format");
    verifyRefused(WaveFile::whole(WaveFile::part("fmt ", file.format().substr(0, 14)) + data), "14 bytes");
    verifyRefused(WaveFile::whole(WaveFile::part("fmt ", file.format())), "no samples");
    std::string contradicting = file.format();
    contradicting[12] = 3;
    verifyRefused(WaveFile::whole(WaveFile::part("fmt ", contradicting) + data), "contradicts");
    const std::string extended = mono(1, 16, true).format();
    std::string otherGuid = extended;
    otherGuid.back() = 'x';
    verifyRefused(WaveFile::whole(WaveFile::part("fmt ", otherGuid) + data), "extended");
    verifyRefused(WaveFile::whole(WaveFile::part("fmt ", extended.substr(0, 20)) + data), "extended");
  }

  void unusableSamplesAreRefused() {
    WaveFile file = mono(1, 16, false);
    const std::string format = WaveFile::part("fmt ", file.format());
    verifyRefused(WaveFile::whole(format + WaveFile::part("data", "abc")), "middle of a sample");
    verifyRefused(WaveFile::whole(format + WaveFile::part("data", "")), "0 samples");
    verifyRefused(WaveFile::whole(format + WaveFile::part("data", "ab")), "1 samples");
    for (const double bad : {std::nan(""), std::numeric_limits<double>::infinity()}) {
      WaveFile real = mono(3, 32, false);
      real.samples[0][3] = bad;
      verifyRefused(real.bytes(), "Sample 4");
    }
    file.rate = 1000;
    file.samples = {std::vector<double>(601000, 0.1)};
    verifyRefused(file.bytes(), "601 s long");
    file.samples[0].resize(600000);
    QVERIFY(readSoundFile(file.bytes()).has_value());
  }
};

FETTLE_TEST(TestSoundFile)
#include "test_sound_file.moc"
