#pragma once
#include <QWidget>

namespace fettle::ui {

/// What the bench shows while no machine is open: how to begin, with a button for each way.
class StartPage : public QWidget {
  Q_OBJECT
 public:
  explicit StartPage(QWidget* parent = nullptr);

 signals:
  void newWanted();
  void openWanted();
  void demoWanted();
  void fileWanted(const QString& path);

 protected:
  void showEvent(QShowEvent* event) override;
};

/// The text of the demo machine, where the program was installed or built; empty when it is not there.
QString demoHistory();

}  // namespace fettle::ui
