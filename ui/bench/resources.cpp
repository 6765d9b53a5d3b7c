#include "ui/bench/resources.h"

#include <QResource>

/// Stands outside every namespace because the macro wants it so.
static void takeIn() {
  Q_INIT_RESOURCE(fettle);
}

namespace fettle::ui {

void takeInResources() {
  takeIn();
}

}  // namespace fettle::ui
