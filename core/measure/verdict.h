#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/measure/instrument.h"
#include "core/measure/quantity.h"

namespace fettle {

enum class Verdict { none, pass, undecided, fail };

/// "none", "pass", "undecided", "fail": the words of files.
std::string verdictKey(Verdict verdict);
Verdict verdictFromKey(const std::string& key);
/// The word on a screen.
std::string verdictWord(Verdict verdict);

/// The worst of two; worst first: fail, undecided, pass, none.
Verdict worst(Verdict first, Verdict second);

/// An interval a value should lie in; a missing end is open. Without any end there is no tolerance.
struct Tolerance {
  std::optional<double> low, high;
  bool named() const { return low || high; }
  friend bool operator==(const Tolerance&, const Tolerance&) = default;
};

/// A decision with its guard band.
struct Judgement {
  Verdict verdict = Verdict::none;
  double guardBand = 0;
  bool tooCoarse = false;  ///< twice the guard band fills the tolerance: nothing could ever pass
};

/// Decision rule of ISO 14253-1 with guard band g = t(0.95, dof)·u: pass when inside the tolerance by g,
/// fail when outside by g, else undecided. Without u the guard band is zero; where only a 95 % interval
/// is known its ends decide.
Judgement judge(const Quantity& quantity, const Tolerance& tolerance);

/// The instrument of the bench list with the same unit, the widest limit of error that still decides
/// within a tolerance of this width; none when no instrument of the list would do. Alignment by eye and
/// heights of the machine's own probe are no instruments to change to.
std::optional<Instrument> instrumentThatWouldDo(double toleranceWidth, const std::string& unit);

}  // namespace fettle
