#pragma once
#include <string>
#include <vector>

#include "core/fields/field_list.h"
#include "core/steps/contract/step_context.h"
#include "core/steps/contract/step_result.h"

namespace fettle {

/// The heaters of a printer, for fields that name one.
std::vector<Choice> heaterChoices();

/// "Hot end" of "hot_end".
std::string heaterName(const std::string& key);

/// Time within which a rise must show, s: hot end 15, bed 90, chamber 300.
double riseWindowOf(const std::string& heater);

/// Inputs of a step whose runs are each about one heater; Step::subjectField is `heater`.
struct HeaterInput {
  std::string heater;  ///< "hot_end", "bed", "chamber"; "": the run's subject

  void describeHeater(FieldList& fields);
  /// The heater the run is about; empty while nobody said.
  std::string heaterOf(const StepContext& context) const;
  /// Adds `other-heater` where the run was begun for another heater than its entry says.
  void noteOtherHeater(StepResult& result, const StepContext& context) const;
};

}  // namespace fettle
