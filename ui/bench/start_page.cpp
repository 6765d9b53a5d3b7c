#include "ui/bench/start_page.h"

#include <QApplication>
#include <QDir>
#include <QFileInfo>
#include <QLabel>
#include <QPushButton>
#include <QStandardPaths>
#include <QVBoxLayout>

#include "ui/bench/recent_files.h"
#include "ui/bench/section_title.h"
#include "ui/theme/look.h"
#include "ui/theme/type_label.h"

namespace fettle::ui {
namespace {

constexpr int recentShown = 4;

}  // namespace

StartPage::StartPage(QWidget* parent) : QWidget(parent) {
  setObjectName("startPage");
  auto* column = new QVBoxLayout;
  column->setSpacing(9);
  auto* title = new TypeLabel(&Fonts::stepTitle, tr("No machine is open"));
  auto* words = new QLabel(
      tr("A machine is one file: its sheet, every session at the bench, the readings and what follows from "
         "them. Make a new one, or open one; then start a session and go through the steps in the list."));
  words->setWordWrap(true);
  column->addStretch(1);
  column->addWidget(title);
  column->addWidget(words);
  const auto add = [&](const QString& text, const QString& name, auto wanted) {
    auto* button = new QPushButton(text);
    button->setObjectName(name);
    connect(button, &QPushButton::clicked, this, wanted);
    column->addWidget(button);
  };
  add(tr("&New machine… (Ctrl+N)"), "newMachineButton", &StartPage::newWanted);
  add(tr("&Open a machine… (Ctrl+O)"), "openMachineButton", &StartPage::openWanted);
  if (!demoHistory().isEmpty()) {
    add(tr("Look at the &demo machine"), "demoButton", &StartPage::demoWanted);
  }
  const QStringList recent = recentFiles().mid(0, recentShown);
  if (!recent.isEmpty()) {
    column->addWidget(new SectionTitle(tr("Opened before")));
  }
  for (const QString& path : recent) {
    QString name = QDir::toNativeSeparators(path);
    add(name.replace('&', "&&"), "recentButton", [this, path] { emit fileWanted(path); });
  }
  column->addStretch(2);
  auto* middle = new QWidget;
  middle->setLayout(column);
  middle->setMaximumWidth(520);
  auto* row = new QHBoxLayout(this);
  row->addStretch(1);
  row->addWidget(middle, 4);
  row->addStretch(1);
}

void StartPage::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  findChild<QPushButton*>("newMachineButton")->setFocus();
}

QString demoHistory() {
  const QString place = "demo-sessions/wagtail/wagtail.json";
  const QDir programs(QCoreApplication::applicationDirPath());
  for (const QString& beside : {"../share/fettle/" + place, "../../../" + place}) {  // installed, or built
    if (programs.exists(beside)) {
      return QDir::cleanPath(programs.filePath(beside));
    }
  }
  return QStandardPaths::locate(QStandardPaths::GenericDataLocation, "fettle/" + place);
}

}  // namespace fettle::ui
