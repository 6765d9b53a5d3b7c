#pragma once
#include <string>

namespace fettle {

/// A name as it stands in result ids: lower case, anything but letters a to z and digits one underscore.
std::string idWord(const std::string& name);

}  // namespace fettle
