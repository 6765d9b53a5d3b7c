#include "core/store/migrations.h"

#include "core/store/format_1.h"

namespace fettle {

const std::vector<Migration>& migrations() {
  static const std::vector<Migration> all{{1, "", bringFormat1To2}};
  return all;
}

}  // namespace fettle
