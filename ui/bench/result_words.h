#pragma once
#include <QString>
#include <string>

#include "core/measure/verdict.h"

namespace fettle::ui {

/// A value that no line break parts from its uncertainty or unit.
QString unbroken(const std::string& value);

/// Glyph and word of a verdict: "✓ pass".
QString verdictText(Verdict verdict);

}  // namespace fettle::ui
