#pragma once
#include <QTest>
#include <QtWidgets>
#include <memory>

#include "tests/support/imported_machine.h"
#include "ui/bench/main_window.h"
#include "ui/theme/look.h"

namespace fettle::tests {

/// The bench with this machine, painted and with the keyboard, 1280×800; null when it did not come so far.
inline std::unique_ptr<ui::MainWindow> benchWindow(const ImportedMachine& machine) {
  auto window = std::make_unique<ui::MainWindow>(ui::applyLook(*qApp, ui::Look::light));
  if (!machine.isMade() || !window->openFile(machine.file())) {
    return nullptr;
  }
  window->resize(1280, 800);
  window->show();
  QApplication::setActiveWindow(window.get());
  return QTest::qWaitForWindowActive(window.get()) ? std::move(window) : nullptr;
}

}  // namespace fettle::tests
