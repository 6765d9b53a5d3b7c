#pragma once
#include <Eigen/Core>
#include <optional>
#include <string>
#include <vector>

#include "core/maths/dead_time_model.h"
#include "core/maths/pid_rules.h"
#include "core/measure/quantity.h"
#include "core/steps/contract/step_result.h"
#include "core/steps/heater_control/inputs.h"

namespace fettle {

/// What is known of a heater: a model, or only its ultimate point.
struct HeaterModel {
  std::optional<maths::DeadTimeModel> plant;
  std::optional<maths::UltimatePoint> point;  ///< of the relay; a model has its own
  /// Covariance of (gain, time constant, dead time) or (Ku, Pu); empty when the numbers were typed.
  Eigen::MatrixXd covariance;
  double dof = infiniteDegreesOfFreedom;
};

/// Gains as the controller wants them: at full scale where that is typed.
struct ControllerGains {
  Quantity proportional, integral, derivative;
};

/// One rule's setting.
struct RuleSetting {
  std::string key;   ///< "simc"
  std::string name;  ///< "SIMC"
  maths::PidSetting pid;
  std::optional<ControllerGains> gains;  ///< none while the full scale typed for them is refused
};

/// Gives the settings of every rule that the model allows: from a model simc, ziegler_nichols,
/// tyreus_luyben, amigo and the model's own `Ku` and `Pu`; from an ultimate point ziegler_nichols and
/// tyreus_luyben. Each as ideal (`Kc` duty per °C, `Ti_s`, `Td_s`), as parallel for a duty of 0 to 1 (`Kp`,
/// `Ki`, `Kd`), times `output_full_scale` where typed (`Kp_at_full_scale` ...), and that per sample where
/// `period_s` is typed (`Kp_per_sample`, `Ki_per_sample` = Ki·period, `Kd_per_sample` = Kd/period).
/// Uncertainties by partial derivatives from the covariance. A rule whose formula has no finite value
/// (no dead time) is withheld; what needs a refused entry waits for it.
std::vector<RuleSetting> giveRules(StepResult& result, const HeaterControlInputs& inputs,
                                   const std::string& heater, const HeaterModel& model);

}  // namespace fettle
