#pragma once
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "core/measure/instrument.h"
#include "core/measure/quantity.h"
#include "core/measure/verdict.h"
#include "core/steps/contract/machine_sheet.h"
#include "core/steps/contract/result_key.h"
#include "core/steps/contract/setting.h"
#include "core/steps/contract/work_memory.h"

namespace fettle {

/// Everything a step may know besides its inputs. A step never reads the store.
struct StepContext {
  MachineSheet sheet;
  SettingValues asFound;  ///< as the controller was delivered
  SettingValues inForce;  ///< while the run was measured, where that differs from as found
  std::map<std::string, std::map<std::string, Quantity>>
      accepted;  ///< step -> id, of its last accepted run
  std::map<std::string, Instrument>
      instruments;  ///< by "column" and "table.column"; defaults are filled in before evaluation
  std::map<std::string, Tolerance> tolerances;  ///< by "step.result" or its pattern; those the user changed
  std::string subject;                          ///< what the run is about, the key of a heater; or empty
  /// Told a fraction done; answers false when the work should stop. May be empty.
  std::function<bool(double)> progress;
  std::shared_ptr<WorkMemory> memory;  ///< may be empty

  /// Relative corrections start from the value in force, never from the value on arrival. Throws Refusal
  /// when the value is a word.
  std::optional<double> inForceNumber(const SettingId& setting) const;
  SettingValue inForceValue(const SettingId& setting) const;
  /// As delivered: for comparisons. Throws Refusal when the value is a word.
  std::optional<double> asFoundNumber(const std::string& setting) const;
  SettingValue asFoundValue(const std::string& setting) const;
  /// A result of another step's last accepted run, with its uncertainty. The step lists it in Step::reads.
  std::optional<Quantity> acceptedQuantity(const std::string& step, const std::string& id) const;
  std::optional<double> acceptedNumber(const std::string& step, const std::string& id) const;
  /// The tolerance the user set for "<step>.<result id>": for that id, else for its pattern
  /// ("mechanics.<axis>.drag_spread").
  std::optional<Tolerance> changedTolerance(const std::string& judged) const;
  /// The instrument of a column, "table.column" where two tables read a column of that name differently;
  /// throws std::out_of_range for a column described without one.
  const Instrument& instrument(const std::string& column) const;
};

/// Thrown out of a step when progress() said stop; evaluateStep turns it into an error.
struct Cancelled {};

}  // namespace fettle
