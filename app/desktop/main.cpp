#include <QApplication>
#include <QCommandLineParser>
#include <QIcon>
#include <QTimer>
#include <QTranslator>
#include <cstdio>

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

}  // namespace

int main(int argc, char** argv) {
  QApplication application(argc, argv);
  QApplication::setOrganizationName("Fettle");
  QApplication::setApplicationName("Fettle");
  QApplication::setApplicationVersion(QString::fromStdString(fettle::programVersion()));
  fettle::ui::takeInResources();
  QApplication::setWindowIcon(QIcon(":/icons/fettle.svg"));
  QApplication::setDesktopFileName("fettle");
  QTranslator words;
  if (words.load(QLocale(), "fettle", "_", ":/translations")) {
    QApplication::installTranslator(&words);
  }
  fettle::Text::setTranslator([](const char* context, const char* source) {
    return QCoreApplication::translate(context, source).toStdString();
  });

  QCommandLineParser arguments;
  arguments.setApplicationDescription(
      QCoreApplication::translate("main", "A commissioning bench for filament printers."));
  arguments.addHelpOption();
  arguments.addVersionOption();
  arguments.addPositionalArgument("file", QCoreApplication::translate("main", "machine file to open"),
                                  "[file.fettle]");
  const QCommandLineOption look(
      "look", QCoreApplication::translate("main", "light, dark, or as the desktop"), "look", "desktop");
  const QCommandLineOption step("step", QCoreApplication::translate("main", "step to show first"), "step");
  const QCommandLineOption size(
      "size", QCoreApplication::translate("main", "size of the window, for pictures"), "1280x800");
  const QCommandLineOption untilPainted(
      "until-painted", QCoreApplication::translate("main", "leave once the window is painted, for timing"));
  arguments.addOptions({look, step, size, untilPainted});
  arguments.process(application);
  const auto wanted = fettle::ui::lookFromText(arguments.value(look));
  if (!wanted) {
    std::fprintf(stderr, "--look takes light, dark or desktop\n");
    return 2;
  }
  const auto& palette = fettle::ui::applyLook(application, *wanted);
  fettle::ui::MainWindow window(palette);
  if (!arguments.positionalArguments().isEmpty()) {
    window.openFile(arguments.positionalArguments().constFirst());
  }
  if (arguments.isSet(step)) {
    window.chooseStep(arguments.value(step).toStdString());
  }
  if (const QStringList sides = arguments.value(size).split('x'); sides.size() == 2) {
    window.resize(sides[0].toInt(), sides[1].toInt());
  }
  LeaveWhenPainted leave;
  if (arguments.isSet(untilPainted)) {
    window.centralWidget()->installEventFilter(&leave);
  }
  window.show();
  return QApplication::exec();
}
