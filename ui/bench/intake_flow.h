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

/// Sets the value at "captures[2].capture" inside a copy of the inputs and returns the whole value of the
/// top-level key; rows that are not there yet are added.
Json withValueAt(const Json& inputs, const QString& path, const Json& value);

/// The field at such a path, or null.
const Field* fieldAt(const std::vector<Field>& fields, const QString& path);

}  // namespace fettle::ui
