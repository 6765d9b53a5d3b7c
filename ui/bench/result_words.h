#pragma once
#include <QString>
#include <string>

namespace fettle::ui {

/// A value that no line break parts from its uncertainty; before an interval or a unit it may break.
QString unbroken(const std::string& value);

}  // namespace fettle::ui
