#pragma once
#include <string>
#include <vector>

#include "core/history/history.h"

namespace fettle {

/// One setting with its past: as delivered or as left by earlier sessions, and as left by this one.
struct SettingInForce {
  std::string id, label, unit;
  SettingValue asFound;
  std::string asFoundOn;
  std::optional<Adoption> asLeft;
  std::string step;  ///< that adopted it
  RecordId run = 0;  ///< its evidence
};

/// As found at the start of a session: the latest of what was delivered, what earlier sessions adopted, and
/// what was read off the controller up to this session (StepResult::found of the last accepted run of each
/// session, step and subject; it was there before anything that session adopted).
SettingValues asFoundFor(const History& history, RecordId session);

/// The same as a run sees it: without what runs of its own step read in its session, which it replaces.
SettingValues asFoundFor(const History& history, const StepRun& reader);

/// The settings a run's step knows as they are while it is measured: as found, then as the runs before it
/// in its session left them.
SettingValues inForceFor(const History& history, const StepRun& run);

/// Every setting that is known as found or was adopted, by session.
std::vector<SettingInForce> settingsInForce(const History& history, RecordId session);

}  // namespace fettle
