#pragma once
#include <QString>
#include <QTemporaryDir>
#include <memory>
#include <string>
#include <vector>

#include "core/history/history.h"
#include "core/store/machine_file.h"

namespace fettle::tests {

/// A folder of its own for files of a test.
class Folder {
 public:
  Folder();
  std::string path(const std::string& name) const;
  /// The names in it, sorted.
  std::vector<std::string> names() const;

 private:
  QTemporaryDir m_folder;
};

/// A history with every kind of record, blank values, texts of many scripts and numbers that need all
/// their digits. Ids are in the order of the text exchange.
History fullHistory();
/// A result with a value, a value withheld, a text, proposals, a finding, verdicts and a chart.
Evaluated someResult(const std::string& step, double value);
/// A session 2 and one run 3 of it.
History smallHistory();

/// Which parts of two histories differ; empty when they are the same.
QString differences(const History& first, const History& second);

/// What keeps a text from being one sentence; empty when it is one.
QString notOneSentence(const std::string& text);

std::string bytesOf(const std::string& path);
void writeBytes(const std::string& path, const std::string& bytes);

/// Runs SQL on a file behind the program's back.
void runSql(const std::string& path, const std::string& sql);
std::string askSql(const std::string& path, const std::string& sql);

/// The change of the notes of a run.
Change notesChange(const History& history, RecordId run, const std::string& notes);
/// The addition of a run to a session.
Change addedRun(const History& history, RecordId session, const std::string& step);

}  // namespace fettle::tests

/// Makes or opens a file that must be there; fails the test with its sentence otherwise.
#define OPENED(name, call)                                                  \
  auto name##Opened = call;                                                 \
  QVERIFY2(name##Opened, name##Opened ? "" : name##Opened.error().c_str()); \
  std::unique_ptr<fettle::MachineFile> name = std::move(*name##Opened)

#define ONE_SENTENCE(text) QCOMPARE(fettle::tests::notOneSentence(text), QString())
#define SAME_HISTORY(first, second) QCOMPARE(fettle::tests::differences(first, second), QString())
