#pragma once
#include <QCoreApplication>

namespace fettle::ui {

/// Translates what the functions of the forms say that belong to no widget.
struct FormWords {
  Q_DECLARE_TR_FUNCTIONS(fettle::ui::FormWords)
};

}  // namespace fettle::ui
