#pragma once
#include <functional>
#include <string>
#include <tl/expected.hpp>
#include <utility>
#include <vector>

#include "core/fields/field_reader.h"
#include "core/history/history.h"
#include "core/steps/contract/step.h"

namespace fettle {

/// The bytes behind {"file": ..., "sha256": ...}; the error is one sentence.
using FileBytes = std::function<tl::expected<std::string, std::string>(const Json& reference)>;

/// SHA-256 in hexadecimal (FIPS 180-4, by the crypto library).
std::string sha256(std::string_view bytes);

/// Makes InputFiles of core/intake: reads captures, tables and grids through `bytes`, maps columns and
/// units as the reference says, and keeps captures it has read by content and mapping.
class IntakeFiles : public InputFiles {
 public:
  explicit IntakeFiles(FileBytes bytes);
  tl::expected<CapturePointer, std::string> capture(const Json& reference, const Field& field) override;
  tl::expected<Json, std::string> table(const Json& reference, const Field& field) override;
  tl::expected<Json, std::string> grid(const Json& reference, const Field& field) override;
  /// Told a fraction done; answers false to stop.
  void setProgress(std::function<bool(double)> progress);

 private:
  /// The bytes a reference leads to, or what is wrong with it.
  tl::expected<std::string, std::string> bytesOf(const Json& reference) const;

  FileBytes m_bytes;
  std::function<bool(double)> m_progress;
  std::vector<std::pair<std::string, CapturePointer>> m_captures;  ///< the last few, by content and mapping
};

/// What a run may know besides its inputs, from a snapshot. The error is one sentence about the sheet.
tl::expected<StepContext, std::string> contextFrom(const Json& snapshot);

/// The part of a context a record keeps: {"sheet", "as_found", "in_force", "accepted", "tolerances"}, of
/// the sheet, the tolerances and the accepted results only what the step reads.
Json snapshotFor(const History& history, const StepRun& run);

std::string hashOf(const Json& inputs);

/// Everything an evaluation needs, taken out of the history, so that it can run in another thread.
struct PreparedRun {
  std::string step;
  Json inputs;
  StepContext context;
  Json with;            ///< the snapshot the result will carry
  std::string problem;  ///< one sentence when nothing can be evaluated
};

PreparedRun prepareRun(const History& history, const StepRun& run);

/// The same from what a record kept: evaluates a run as it was evaluated then.
PreparedRun prepareFromSnapshot(const StepRun& run, const Json& snapshot);

/// Never fails: refused inputs come back as a problem. When `progress` answers false the work is broken
/// off, and the problem says only that.
Evaluated evaluatePrepared(const PreparedRun& run, InputFiles& files,
                           std::function<bool(double)> progress = {});

/// Both in one go.
Evaluated evaluateRun(const History& history, const StepRun& run, InputFiles& files);

/// Evaluates every run of a history that comes without results. An accepted run without a signed result is
/// signed with what comes out.
void evaluateAll(History& history, InputFiles& files);

/// What a run keeps of its result when it is accepted: all but the charts.
Json signedForm(const StepResult& result);

/// Whether a stored evaluation still belongs to its run's inputs, and was made with today's values.
bool isCurrent(const Evaluated& evaluated, const StepRun& run);
/// Whether a value it was evaluated with has changed since. A value that only came to be known later does
/// not count, but for those the user types: sheet and tolerances.
bool usesOlderValues(const Evaluated& evaluated, const History& history, const StepRun& run);

}  // namespace fettle
