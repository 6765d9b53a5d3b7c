#pragma once
#include <string>

namespace fettle {

/// Version of this program, as kept with every result: "0.1.0".
std::string programVersion();

}  // namespace fettle
