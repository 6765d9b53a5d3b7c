#pragma once
#include <QLayout>
#include <QWidget>
#include <algorithm>

namespace fettle::ui {

/// Makes a window as high as what is in it needs at its width; never lower: sentences are shown whole.
inline void growToContents(QWidget& window) {
  window.layout()->activate();
  window.resize(window.width(),
                std::max(window.height(), window.layout()->totalHeightForWidth(window.width())));
}

}  // namespace fettle::ui
