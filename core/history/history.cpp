#include "core/history/history.h"

#include <algorithm>

namespace fettle {
namespace {

template <typename T>
const T* findById(const std::vector<T>& records, RecordId id) {
  const auto found =
      std::find_if(records.begin(), records.end(), [&](const T& record) { return record.id == id; });
  return found == records.end() ? nullptr : &*found;
}

template <typename T>
RecordId greatestId(const std::vector<T>& records) {
  return records.empty() ? 0 : records.back().id;  // kept in order of id
}

}  // namespace

const Session* History::session(RecordId id) const {
  return findById(sessions, id);
}

const StepRun* History::run(RecordId id) const {
  return findById(runs, id);
}

std::string History::endOf(RecordId id) const {
  const auto next =
      std::find_if(sessions.begin(), sessions.end(), [&](const Session& other) { return other.id > id; });
  return next == sessions.end() ? std::string() : next->date;
}

std::vector<const StepRun*> History::runsOf(const std::string& step, RecordId sessionId) const {
  std::vector<const StepRun*> found;
  for (const auto& candidate : runs) {
    if (candidate.step == step && candidate.session == sessionId) {
      found.push_back(&candidate);
    }
  }
  return found;
}

const StepRun* History::lastAccepted(const std::string& step, RecordId upToSession) const {
  for (auto candidate = runs.rbegin(); candidate != runs.rend(); ++candidate) {
    if (candidate->step == step && candidate->accepted() && candidate->session <= upToSession) {
      return &*candidate;
    }
  }
  return nullptr;
}

RecordId History::nextId() const {
  return 1 + std::max({machine.id, greatestId(changes), greatestId(sessions), greatestId(runs),
                       greatestId(marks)});
}

}  // namespace fettle
