#pragma once
#include <QStringList>

class QMimeData;

namespace fettle::ui {

/// The files of this computer that were dropped or copied.
QStringList filesIn(const QMimeData* data);

}  // namespace fettle::ui
