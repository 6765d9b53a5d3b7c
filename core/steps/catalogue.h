#pragma once
#include <string>
#include <vector>

#include "core/steps/contract/step.h"

namespace fettle {

/// The steps that exist, in the order of the bench.
const std::vector<Step>& catalogue();

/// The step of that key, or null.
const Step* findStep(const std::string& key);

/// The name of a step; its key where it is not in the catalogue.
std::string stepName(const std::string& key);

/// All settings the steps propose or read as found, each once.
const std::vector<SettingDescription>& knownSettings();

}  // namespace fettle
