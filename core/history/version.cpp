#include "core/history/version.h"

namespace fettle {

std::string programVersion() {
  return FETTLE_VERSION;
}

}  // namespace fettle
