#include "core/history/change.h"

#include <algorithm>
#include <stdexcept>

namespace fettle {
namespace {

template <typename T>
std::vector<T>& recordsOf(History& history);
template <>
std::vector<PartChange>& recordsOf(History& history) {
  return history.changes;
}
template <>
std::vector<Session>& recordsOf(History& history) {
  return history.sessions;
}
template <>
std::vector<StepRun>& recordsOf(History& history) {
  return history.runs;
}
template <>
std::vector<StepMark>& recordsOf(History& history) {
  return history.marks;
}

template <typename T>
auto positionOf(std::vector<T>& records, RecordId id) {
  return std::lower_bound(records.begin(), records.end(), id,
                          [](const T& record, RecordId wanted) { return record.id < wanted; });
}

template <typename T>
void remove(const T& record, History& history) {
  auto& records = recordsOf<T>(history);
  const auto at = positionOf(records, record.id);
  if (at == records.end() || *at != record) {
    throw std::logic_error("a change does not fit the history it is applied to");
  }
  records.erase(at);
}

template <typename T>
void insert(const T& record, History& history) {
  auto& records = recordsOf<T>(history);
  records.insert(positionOf(records, record.id), record);
}

void remove(const MachineRecord& record, History& history) {
  if (history.machine != record) {
    throw std::logic_error("a change does not fit the history it is applied to");
  }
}

void insert(const MachineRecord& record, History& history) {
  history.machine = record;
}

}  // namespace

RecordId idOf(const Record& record) {
  return std::visit([](const auto& known) { return known.id; }, record);
}

void apply(const Change& change, History& history) {
  if (change.before) {
    std::visit([&](const auto& record) { remove(record, history); }, *change.before);
  }
  if (change.after) {
    std::visit([&](const auto& record) { insert(record, history); }, *change.after);
  }
}

}  // namespace fettle
