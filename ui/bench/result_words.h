#pragma once
#include <QString>
#include <string>

namespace fettle::ui {

/// A value that no line break parts from its uncertainty or unit.
QString unbroken(const std::string& value);

}  // namespace fettle::ui
