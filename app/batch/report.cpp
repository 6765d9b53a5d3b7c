#include <cstdio>
#include <cstdlib>

#include "app/batch/verbs.h"
#include "core/measure/text.h"
#include "core/report/build_report.h"
#include "core/store/machine_file.h"

#ifdef FETTLE_HAS_DRAWING
#include <QApplication>

#include "ui/report/write_report.h"
#endif

namespace fettle::batch {
namespace {

#ifdef FETTLE_HAS_DRAWING
void draw(int& argc, char** argv, const History& history, RecordId session, const std::string& out) {
  if (!std::getenv("QT_QPA_PLATFORM")) {  // NOLINT(concurrency-mt-unsafe): one thread
    qputenv("QT_QPA_PLATFORM", "offscreen");
  }
  // Standard error is for one sentence: what the toolkit notices about the desktop is not said.
  qInstallMessageHandler([](QtMsgType kind, const QMessageLogContext&, const QString& message) {
    if (kind == QtCriticalMsg || kind == QtFatalMsg) {
      std::fprintf(stderr, "%s\n", qUtf8Printable(message));
    }
  });
  QApplication application(argc, argv);
  const auto written = ui::writeReportFile(history, session, QString::fromStdString(out));
  if (!written) {
    throw Failure{written.error().toStdString()};
  }
}
#else
void draw(int&, char**, const History&, RecordId, const std::string& out) {
  throw Failure{say(Text::tr("{0}: this build cannot draw; only .csv is possible."), out)};
}
#endif

}  // namespace

std::string report(int& argc, char** argv, const std::string& machineFile, const std::string& out) {
  const auto file = MachineFile::open(machineFile, true);
  if (!file) {
    throw Failure{file.error()};
  }
  const History& history = (*file)->history();
  const RecordId session = history.sessions.empty() ? 0 : history.sessions.back().id;
  if (out.ends_with(".csv")) {
    writeBytes(out, reportAsCsv(history, session));
  } else {
    draw(argc, argv, history, session, out);
  }
  std::string said = say(Text::tr("The report is in {0}."), out);
  for (const auto& loss : (*file)->losses()) {
    said += "\n" + loss;
  }
  return said;
}

}  // namespace fettle::batch
