#include "core/history/state.h"

#include <algorithm>

#include "core/history/due.h"
#include "core/history/evaluation.h"
#include "core/history/gates.h"
#include "core/measure/text.h"

namespace fettle {
namespace {

const StepMark* markOf(const History& history, const std::string& step, RecordId session,
                       StepMark::Kind kind) {
  const auto& marks = history.marks;
  const auto latest = std::find_if(marks.rbegin(), marks.rend(), [&](const StepMark& mark) {
    return mark.step == step && mark.session == session && mark.kind == kind;
  });
  return latest == marks.rend() ? nullptr : &*latest;
}

bool hasEntries(const StepRun& run) {
  return !run.inputs.empty();
}

/// The run that decides the state: the last accepted one, of this session before earlier ones; while none
/// is accepted, the last one with entries in this session. A run begun beside an accepted one takes nothing
/// back.
const StepRun* decidingRun(const History& history, const std::string& step, RecordId session) {
  if (const StepRun* accepted = history.lastAccepted(step, session)) {
    return accepted;
  }
  const StepRun* begun = nullptr;
  for (const auto& run : history.runs) {
    if (run.step == step && run.session == session && hasEntries(run)) {
      begun = &run;
    }
  }
  return begun;
}

}  // namespace

std::string stateWord(StepState state) {
  switch (state) {
    case StepState::empty:
      return Text::tr("empty");
    case StepState::incomplete:
      return Text::tr("incomplete");
    case StepState::computed:
      return Text::tr("computed");
    case StepState::accepted:
      return Text::tr("accepted");
    case StepState::due:
      return Text::tr("due");
    case StepState::blocked:
      return Text::tr("blocked");
    case StepState::notAffected:
      return Text::tr("not affected");
    case StepState::overridden:
      return Text::tr("overridden");
  }
  return {};
}

std::string stateGlyph(StepState state) {
  switch (state) {
    case StepState::empty:
      return "·";
    case StepState::incomplete:
      return "◌";
    case StepState::computed:
      return "◐";
    case StepState::accepted:
      return "✓";
    case StepState::due:
      return "↻";
    case StepState::blocked:
      return "■";
    case StepState::notAffected:
      return "–";
    case StepState::overridden:
      return "△";
  }
  return {};
}

StepState stateOfRun(const History& history, const StepRun& run) {
  if (run.accepted()) {
    return StepState::accepted;
  }
  const auto evaluated = history.evaluated.find(run.id);
  if (!hasEntries(run)) {
    return StepState::empty;
  }
  const bool complete = evaluated != history.evaluated.end() && evaluated->second.complete();
  return complete ? StepState::computed : StepState::incomplete;
}

StepStanding standingOf(const History& history, const Step& step, RecordId session) {
  StepStanding standing;
  const StepRun* run = decidingRun(history, step.key, session);
  if (run) {
    standing.state = stateOfRun(history, *run);
    const auto evaluated = history.evaluated.find(run->id);
    standing.olderValues =
        evaluated != history.evaluated.end() && usesOlderValues(evaluated->second, history, *run);
  }
  if (const auto due = dueReason(history, step.key, session);
      due && standing.state == StepState::accepted) {
    standing.state = StepState::due;
    standing.why = due->text;
  } else if (const auto* mark = markOf(history, step.key, session, StepMark::Kind::notAffected);
             mark && standing.state == StepState::accepted) {
    standing.state = StepState::notAffected;
    standing.why = mark->reason;
  }
  if (const auto gate = closedGate(history, step, session)) {
    const auto* mark = markOf(history, step.key, session, StepMark::Kind::overridden);
    standing.state = mark ? StepState::overridden : StepState::blocked;
    standing.why =
        mark ? say(Text::tr("{0} Overridden: {1}"), gate->sentence, mark->reason) : gate->sentence;
  }
  return standing;
}

}  // namespace fettle
