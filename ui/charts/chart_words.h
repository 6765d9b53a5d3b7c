#pragma once
#include <QCoreApplication>

namespace fettle::ui {

/// Translations of words outside of any widget: ChartWords::tr("...").
class ChartWords {
  Q_DECLARE_TR_FUNCTIONS(ChartWords)
};

}  // namespace fettle::ui
