#include "core/steps/config_review/settings.h"

#include <algorithm>

#include "core/measure/text.h"

namespace fettle {
namespace {

using Groups = std::vector<std::vector<std::string>>;

const std::vector<std::string> least{"min", "minimum", "lowest", "lower", "from"};
const std::vector<std::string> most{"max", "maximum", "highest", "upper", "to", "top"};

class Listing {
 public:
  void number(const std::string& id, const std::string& label, const std::string& unit, double minimum,
              double maximum, Groups namedBy) {
    m_all.push_back({{id, label, unit}, {minimum, maximum, false, unit}, {}, std::move(namedBy)});
  }
  void word(const std::string& id, const std::string& label, std::vector<std::string> words,
            Groups namedBy) {
    std::vector<Choice> choices;
    for (const auto& one : words) {
      choices.push_back({one, one});
    }
    m_all.push_back({{id, label, "", {}, std::move(choices)}, {}, std::move(words), std::move(namedBy)});
  }
  /// Adopting the setting listed last sets off this part group.
  void disturbs(const std::string& partGroup) { m_all.back().description.disturbs = partGroup; }
  std::vector<ListedSetting> taken() && { return std::move(m_all); }

 private:
  std::vector<ListedSetting> m_all;
};

void addPlaces(Listing& all, const std::string& axis) {
  const auto place = [&](const std::string& key, const std::string& label,
                         const std::vector<std::string>& what, const std::vector<std::string>& end) {
    all.number(key + axis, label + " " + axis, "mm", -5000, 5000, {what, end, {axis}});
  };
  const std::vector<std::string> travel{"travel", "range", "stroke"};
  place("travel_min_", Text::tr("Travel from"), travel, least);
  place("travel_max_", Text::tr("Travel to"), travel, most);
  if (axis == "z") {
    return;
  }
  const std::vector<std::string> bed{"bed", "plate", "table"};
  place("bed_min_", Text::tr("Bed from"), bed, least);
  place("bed_max_", Text::tr("Bed to"), bed, most);
  all.number("probe_offset_" + axis, Text::tr("Probe offset") + " " + axis, "mm", -500, 500,
             {{"probe"}, {"offset"}, {axis}});
  const std::vector<std::string> grid{"probing", "grid", "net"};
  place("probing_min_", Text::tr("Probing grid from"), grid, least);
  place("probing_max_", Text::tr("Probing grid to"), grid, most);
}

void addDrive(Listing& all, const std::string& axis) {
  const auto label = [&](const std::string& words) { return words + " " + axis; };
  all.number(axis + ".steps_per_mm", label(Text::tr("Steps per mm")), "1/mm", 0.1, 100000,
             {{"step", "steps"}, {"mm", "millimetre", "millimeter"}, {axis}});
  all.number(axis + ".top_speed", label(Text::tr("Top speed")), "mm/s", 0.01, 100000, {{"speed"}, {axis}});
  all.number(axis + ".acceleration", label(Text::tr("Acceleration")), "mm/s2", 1, 1e6,
             {{"acceleration"}, {axis}});
  all.disturbs("shaper_adopted");
  all.number(axis + ".motor_current_A", label(Text::tr("Motor current")), "A", 0, 50,
             {{"current"}, {axis}});
  all.word(axis + ".current_is", label(Text::tr("Current is given as")), {"rms", "peak"},
           {{"current"}, {"is", "kind", "as"}, {axis}});
  all.word(axis + ".shaper", label(Text::tr("Input shaper")), {},
           {{"shaper"}, {"kind", "type", "name"}, {axis}});
  all.disturbs("shaper_adopted");
  all.number(axis + ".shaper_hz", label(Text::tr("Shaper frequency")), "Hz", 0.1, 1000,
             {{"shaper"}, {"frequency", "hz"}, {axis}});
  all.disturbs("shaper_adopted");
}

std::vector<ListedSetting> everySetting() {
  Listing all;
  for (const char* axis : {"x", "y", "z"}) {
    addPlaces(all, axis);
    addDrive(all, axis);
  }
  all.number("bed_radius", Text::tr("Bed radius"), "mm", 1, 2500, {{"bed", "plate"}, {"radius"}});
  all.number("probing_columns", Text::tr("Probing columns"), "1", 2, 100,
             {{"probing", "grid", "net"}, {"columns"}});
  all.number("probing_rows", Text::tr("Probing rows"), "1", 2, 100, {{"probing", "grid", "net"}, {"rows"}});
  all.number("feed_steps_per_mm", Text::tr("Feed steps per mm"), "1/mm", 0.1, 100000,
             {{"step", "steps"}, {"feed", "feeder", "filament", "extruder", "e"}});
  const std::vector<std::string> temperature{"temp", "temperature"};
  all.number("hot_end_max_C", Text::tr("Hot end, highest"), "C", 20, 1000,
             {{"hot", "hotend", "nozzle"}, most, temperature});
  all.number("bed_max_C", Text::tr("Bed, highest"), "C", 20, 500, {{"bed"}, most, temperature});
  all.number("flow_factor", Text::tr("Flow factor"), "1", 0.1, 10, {{"flow"}, {"factor"}});
  all.number("pressure_lead_s", Text::tr("Pressure lead"), "s", 0, 10, {{"pressure"}, {"lead"}});
  all.number("retraction_mm", Text::tr("Retraction"), "mm", 0, 100,
             {{"retraction", "retract"}, {"length", "distance", "mm"}});
  return std::move(all).taken();
}

/// "travelMax_X" as {"travel", "max", "x"}.
std::vector<std::string> wordsOf(const std::string& name) {
  std::vector<std::string> words(1);
  char before = ' ';
  for (const char c : name) {
    const bool upper = c >= 'A' && c <= 'Z';
    const bool lower = c >= 'a' && c <= 'z';
    if ((!upper && !lower) || (upper && before >= 'a' && before <= 'z')) {
      words.emplace_back();
    }
    if (upper || lower) {
      words.back() += upper ? static_cast<char>(c - 'A' + 'a') : c;
    }
    before = c;
  }
  return words;
}

bool fits(const std::vector<std::string>& words, const ListedSetting& setting) {
  return std::all_of(setting.namedBy.begin(), setting.namedBy.end(), [&](const auto& group) {
    return std::find_first_of(words.begin(), words.end(), group.begin(), group.end()) != words.end();
  });
}

}  // namespace

const std::vector<ListedSetting>& listedSettings() {
  static const std::vector<ListedSetting> all = everySetting();
  return all;
}

const ListedSetting* findListed(const std::string& id) {
  const auto& all = listedSettings();
  const auto found = std::find_if(
      all.begin(), all.end(), [&](const ListedSetting& setting) { return setting.description.id == id; });
  return found == all.end() ? nullptr : &*found;
}

std::vector<SettingDescription> reviewedSettings() {
  std::vector<SettingDescription> described;
  for (const auto& setting : listedSettings()) {
    SettingDescription one = setting.description;
    if (one.id.starts_with("x.")) {
      one.id = "<axis>" + one.id.substr(1);
      one.label = one.label.substr(0, one.label.size() - 2);  // without " x"
    } else if (one.id.find('.') != std::string::npos) {
      continue;
    }
    described.push_back(std::move(one));
  }
  return described;
}

std::optional<std::string> suggestedSetting(const std::string& name) {
  const auto words = wordsOf(name);
  std::size_t most = 0;
  std::optional<std::string> best;
  for (const auto& setting : listedSettings()) {
    const std::size_t groups = setting.namedBy.size();
    if (groups >= most && fits(words, setting)) {
      best = groups > most ? std::optional(setting.description.id) : std::nullopt;
      most = groups;
    }
  }
  return best;
}

}  // namespace fettle
