#include <QApplication>
#include <QCommandLineParser>
#include <QIcon>
#include <QScreen>
#include <QTimer>
#include <QTranslator>
#include <algorithm>
#include <cstdio>
#include <map>
#include <string>

#include "core/history/version.h"
#include "core/measure/text.h"
#include "ui/bench/main_window.h"
#include "ui/bench/resources.h"
#include "ui/theme/look.h"

namespace {

/// Ends the program after the first painting of the window it watches.
class LeaveWhenPainted : public QObject {
 protected:
  bool eventFilter(QObject* watched, QEvent* event) override {
    if (event->type() == QEvent::Paint) {
      QTimer::singleShot(0, qApp, &QApplication::quit);
    }
    return QObject::eventFilter(watched, event);
  }
};

void takeInWords(QTranslator& words) {
  fettle::ui::takeInResources();
  if (words.load(QLocale(), "fettle", "_", ":/translations")) {
    QCoreApplication::installTranslator(&words);
  }
  fettle::Text::setTranslator([](const char* context, const char* source) {
    return QCoreApplication::translate(context, source).toStdString();
  });
}

const QCommandLineOption& option(const char* name) {
  static const std::map<std::string, QCommandLineOption> all = [] {
    return std::map<std::string, QCommandLineOption>{
        {"look",
         {"look", QCoreApplication::translate("main", "light, dark, or as the desktop"), "look",
          "desktop"}},
        {"step", {"step", QCoreApplication::translate("main", "step to show first"), "step"}},
        {"size",
         {"size", QCoreApplication::translate("main", "size of the window, for pictures"), "1280x800"}},
        {"until-painted",
         {"until-painted",
          QCoreApplication::translate("main", "leave once the window is painted, for timing")}}};
  }();
  return all.at(name);
}

void describe(QCommandLineParser& arguments) {
  arguments.setApplicationDescription(
      QCoreApplication::translate("main", "A commissioning bench for filament printers."));
  arguments.addHelpOption();
  arguments.addVersionOption();
  arguments.addPositionalArgument("file", QCoreApplication::translate("main", "machine file to open"),
                                  "[file.fettle]");
  arguments.addOptions({option("look"), option("step"), option("size"), option("until-painted")});
}

/// Whether only words are asked for, which need no display.
bool asksForWords(int argc, char** argv) {
  return std::any_of(argv + 1, argv + argc, [](const std::string& argument) {
    return argument == "-h" || argument == "--help" || argument == "--help-all" || argument == "-v" ||
           argument == "--version";
  });
}

}  // namespace

int main(int argc, char** argv) {
  QCoreApplication::setOrganizationName("Fettle");
  QCoreApplication::setApplicationName("Fettle");
  QCoreApplication::setApplicationVersion(QString::fromStdString(fettle::programVersion()));
  QTranslator words;
  QCommandLineParser arguments;
  if (asksForWords(argc, argv)) {
    const QCoreApplication application(argc, argv);
    takeInWords(words);
    describe(arguments);
    arguments.process(application);  // says them and ends the program
  }
  QApplication application(argc, argv);
  takeInWords(words);
  QApplication::setWindowIcon(QIcon(":/icons/fettle.svg"));
  QApplication::setDesktopFileName("fettle");
  describe(arguments);
  arguments.process(application);
  const auto wanted = fettle::ui::lookFromText(arguments.value(option("look")));
  if (!wanted) {
    std::fprintf(stderr, "--look takes light, dark or desktop\n");
    return 2;
  }
  const auto& palette = fettle::ui::applyLook(application, *wanted);
  fettle::ui::MainWindow window(palette);
  if (!arguments.positionalArguments().isEmpty()) {
    window.openFile(arguments.positionalArguments().constFirst());
  }
  if (arguments.isSet(option("step"))) {
    window.chooseStep(arguments.value(option("step")).toStdString());
  }
  if (const QStringList sides = arguments.value(option("size")).split('x'); sides.size() == 2) {
    window.resize(sides[0].toInt(), sides[1].toInt());
  } else {
    constexpr QSize frame(16, 48);  // of the desktop round a window, about
    window.resize(window.size().boundedTo(window.screen()->availableSize() - frame));
  }
  LeaveWhenPainted leave;
  if (arguments.isSet(option("until-painted"))) {
    window.centralWidget()->installEventFilter(&leave);
  }
  window.show();
  return QApplication::exec();
}
