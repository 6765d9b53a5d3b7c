#pragma once
#include <QString>
#include <QWidget>

#include "ui/editing/document.h"

namespace fettle::ui {

/// Brings a file into a step: reads its bytes, lets the user see and map them, keeps the content in the
/// machine file and sets the input that refers to it. `path` is the input's place: "grid",
/// "captures[2].capture". Answers false when the user thought better of it or something failed (said then).
bool takeFile(Document& document, const Step& step, const StepRun* run, const QString& path,
              const QString& fileName, QWidget* parent);

}  // namespace fettle::ui
