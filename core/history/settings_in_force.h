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

/// As found at the start of a session: as delivered, overlaid with what earlier sessions adopted.
SettingValues asFoundFor(const History& history, RecordId session);

/// Every setting that is known as found or was adopted, by session.
std::vector<SettingInForce> settingsInForce(const History& history, RecordId session);

}  // namespace fettle
