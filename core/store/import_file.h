#pragma once
#include <memory>

#include "core/store/exchange.h"
#include "core/store/machine_file.h"

namespace fettle {

/// Makes a machine file of a history in the text exchange form, with its files and with the results of all
/// its runs, whole or not at all. `readFile` is that of importHistory. The error is one sentence.
tl::expected<std::unique_ptr<MachineFile>, std::string> importFile(
    const Json& json,
    const std::function<tl::expected<std::string, std::string>(const std::string&)>& readFile,
    const std::string& path);

}  // namespace fettle
