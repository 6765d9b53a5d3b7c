#include "core/history/part_groups.h"

#include <algorithm>

#include "core/measure/text.h"
#include "core/steps/catalogue.h"

namespace fettle {

const std::vector<PartGroup>& partGroups() {
  static const std::vector<PartGroup> groups{
      {"frame",
       Text::tr("Frame, braces"),
       {"mechanics", "resonance", "motion-limits", "size-and-skew", "bed-tramming", "bed-shape"}},
      {"moved",
       Text::tr("Moved or transported"),
       {"mechanics", "safety", "bed-tramming", "probe-position", "size-and-skew"}},
      {"first_hours",
       Text::tr("First ten hours or first heat cycle"),
       {"mechanics", "belt-tension", "bed-tramming", "first-layer"}},
      {"bed",
       Text::tr("Bed, surface"),
       {"bed-tramming", "bed-shape", "probe-repeatability", "first-layer", "heater-control"}},
      {"probe",
       Text::tr("Probe, its mount"),
       {"probe-position", "probe-repeatability", "bed-shape", "first-layer"}},
      {"nozzle",
       Text::tr("Nozzle"),
       {"first-layer", "line-width", "melt-rate", "print-temperature", "pressure-lead", "retraction",
        "probe-position"}},
      {"hot_end",
       Text::tr("Hot end, heater, sensor"),
       {"safety", "power-up", "temperature-sensor", "heater-control", "probe-position", "first-layer",
        "print-temperature", "line-width", "melt-rate", "pressure-lead", "retraction"}},
      {"cooling", Text::tr("Fan, sock, enclosure"), {"heater-control", "print-temperature", "melt-rate"}},
      {"feeder", Text::tr("Feeder"), {"filament-feed", "melt-rate", "pressure-lead", "retraction"}},
      {"feed_path", Text::tr("Spool, tube, feed path"), {"pressure-lead", "retraction"}},
      {"drives",
       Text::tr("Belts, pulleys, motors"),
       {"config-review", "belt-tension", "axis-travel", "resonance", "motion-limits", "size-and-skew"}},
      {"motor_current", Text::tr("Motor current, driver"), {"axis-travel", "motion-limits"}},
      {"tool_head",
       Text::tr("Tool head"),
       {"probe-position", "probe-repeatability", "resonance", "first-layer", "motion-limits"}},
      {"electronics",
       Text::tr("Electronics, firmware"),
       {"config-review", "safety", "power-up", "temperature-sensor", "heater-control", "axis-travel",
        "filament-feed", "motion-limits"}},
      {"filament",
       Text::tr("Filament"),
       {"filament-feed", "print-temperature", "line-width", "melt-rate", "pressure-lead", "retraction",
        "size-and-skew"}},
      {"shaper_adopted", Text::tr("Shaper or acceleration adopted"), {"pressure-lead", "motion-limits"}},
      {"temperature_adopted",
       Text::tr("Print temperature adopted"),
       {"line-width", "melt-rate", "pressure-lead", "retraction"}}};
  return groups;
}

const PartGroup* findPartGroup(const std::string& key) {
  const auto& groups = partGroups();
  const auto found =
      std::find_if(groups.begin(), groups.end(), [&](const auto& group) { return group.key == key; });
  return found == groups.end() ? nullptr : &*found;
}

const PartGroup* groupOfAdoption(const std::string& setting) {
  for (const auto& known : knownSettings()) {
    if (!known.disturbs.empty() && matchesPattern(setting, known.id)) {
      return findPartGroup(known.disturbs);
    }
  }
  return nullptr;
}

}  // namespace fettle
