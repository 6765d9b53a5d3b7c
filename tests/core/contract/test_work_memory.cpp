#include "core/steps/contract/work_memory.h"

#include <QTest>
#include <string>

#include "tests/support/test_main.h"

using namespace fettle;

/// What is worked out again, by counting how often it is made.
class TestWorkMemory : public QObject {
  Q_OBJECT

  WorkMemory m_memory;
  int m_made = 0;

  int recalled(int key) {
    return *m_memory.recall<int>(key, [&] {
      ++m_made;
      return 10 * key;
    });
  }

 private slots:
  void init() {
    m_memory = {};
    m_made = 0;
  }

  void madeOnce() {
    QCOMPARE(recalled(1), 10);
    QCOMPARE(recalled(1), 10);
    QCOMPARE(m_made, 1);
    // An equal key of another kind of value is another entry.
    const auto words = m_memory.recall<std::string>(1, [] { return std::string("one"); });
    QCOMPARE(*words, std::string("one"));
  }

  // Sixteen are kept: the first, asked for again before the seventeenth comes, outlives the second.
  void whatWasNotAskedForLongestIsForgotten() {
    for (int key = 1; key <= 16; ++key) {
      recalled(key);
    }
    recalled(1);
    recalled(17);
    QCOMPARE(m_made, 17);
    QCOMPARE(recalled(1), 10);
    QCOMPARE(m_made, 17);
    QCOMPARE(recalled(2), 20);
    QCOMPARE(m_made, 18);
  }
};

FETTLE_TEST(TestWorkMemory)
#include "test_work_memory.moc"
