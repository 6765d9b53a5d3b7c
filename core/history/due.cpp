#include "core/history/due.h"

#include <algorithm>

#include "core/history/part_groups.h"
#include "core/measure/text.h"
#include "core/steps/catalogue.h"

namespace fettle {
namespace {

std::string lastAcceptance(const History& history, const std::string& step, RecordId session) {
  std::string date;
  for (const auto& run : history.runs) {
    if (run.step == step && run.accepted() && run.session <= session) {
      date = std::max(date, run.acceptedOn);
    }
  }
  return date;
}

bool makesDue(const PartGroup* group, const std::string& step) {
  return group && std::find(group->due.begin(), group->due.end(), step) != group->due.end();
}

std::string day(const std::string& date) {
  return date.substr(0, 10);
}

}  // namespace

std::optional<DueReason> dueReason(const History& history, const std::string& step, RecordId session) {
  const std::string accepted = lastAcceptance(history, step, session);
  if (accepted.empty()) {
    return std::nullopt;
  }
  std::string after = accepted;
  for (const auto& mark : history.marks) {
    if (mark.step == step && mark.session <= session && mark.kind == StepMark::Kind::notAffected) {
      after = std::max(after, mark.date);
    }
  }
  const std::string end = history.endOf(session);
  const auto counts = [&](const std::string& date) { return date > after && (end.empty() || date < end); };

  std::optional<DueReason> first;
  const auto offer = [&](const std::string& date, std::string text) {
    if (!first || date < first->date) {
      first = DueReason{date, std::move(text)};
    }
  };
  for (const auto& change : history.changes) {
    const PartGroup* group = findPartGroup(change.group);
    if (counts(change.date) && makesDue(group, step)) {
      const std::string note = change.note.empty() ? "" : " (" + change.note + ")";
      offer(change.date, say(Text::tr("Due since {0}: {1}{2}."), day(change.date), group->label, note));
    }
  }
  const auto offerGroup = [&](const std::string& date, const PartGroup* group) {
    if (counts(date) && makesDue(group, step)) {
      offer(date, say(Text::tr("Due since {0}: {1}."), day(date), group->label));
    }
  };
  for (const auto& run : history.runs) {
    if (run.step == step || run.session > session) {
      continue;
    }
    for (const auto& adoption : run.adopted) {
      offerGroup(adoption.date, groupOfAdoption(adoption.setting));
    }
    const Step* other = run.accepted() ? findStep(run.step) : nullptr;
    for (const auto& group : other ? other->disturbs : std::vector<std::string>{}) {
      offerGroup(run.acceptedOn, findPartGroup(group));
    }
  }
  return first;
}

}  // namespace fettle
