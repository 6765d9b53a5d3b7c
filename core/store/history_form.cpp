#include "core/store/history_form.h"

#include <fmt/ranges.h>

#include <algorithm>
#include <vector>

#include "core/measure/text.h"
#include "core/steps/contract/machine_sheet.h"

namespace fettle {
namespace {

enum class Kind { text, number, zeroOrMore, numberOrText, object, list };

struct Member {
  std::string key;
  Kind kind = Kind::text;
  bool required = false;
};

/// Sentences of the first thing that is wrong.
struct Wrong {
  std::string sentence;
};

bool isOf(Kind kind, const Json& value) {
  switch (kind) {
    case Kind::text:
      return value.is_string() || value.is_null();
    case Kind::number:
      return value.is_number() || value.is_null();
    case Kind::zeroOrMore:
      return value.is_null() || (value.is_number() && value.get<double>() >= 0);
    case Kind::numberOrText:
      return value.is_number() || value.is_string();
    case Kind::object:
      return value.is_object();
    case Kind::list:
      return value.is_array();
  }
  return true;
}

std::string wordOf(Kind kind) {
  switch (kind) {
    case Kind::text:
      return Text::tr("a text in quotes");
    case Kind::number:
      return Text::tr("a number");
    case Kind::zeroOrMore:
      return Text::tr("a number of 0 or more");
    case Kind::numberOrText:
      return Text::tr("a number or a text in quotes");
    case Kind::list:
      return Text::tr("a list in brackets");
    case Kind::object:
      break;
  }
  return Text::tr("an object in braces");
}

std::string keysOf(const std::vector<Member>& members) {
  std::string keys;
  for (const auto& member : members) {
    keys += (keys.empty() ? "" : ", ") + member.key;
  }
  return keys;
}

void require(Kind kind, const Json& value, const std::string& place) {
  if (!isOf(kind, value)) {
    throw Wrong{say(Text::tr("{0}: {1} is needed."), place, wordOf(kind))};
  }
}

std::string inside(const std::string& place, const std::string& key) {
  return place.empty() ? key : fmt::format("{}.{}", place, key);
}

void requireMembers(const Json& object, const std::vector<Member>& members, const std::string& place) {
  require(Kind::object, object, place);
  for (const auto& member : members) {
    const auto found = object.find(member.key);
    if (found != object.end() && !(found->is_null() && member.required)) {
      require(member.kind, *found, inside(place, member.key));
    } else if (member.required) {
      throw Wrong{
          say(Text::tr("{0} is missing; {1} is needed."), inside(place, member.key), wordOf(member.kind))};
    }
  }
  for (const auto& [key, value] : object.items()) {
    if (std::none_of(members.begin(), members.end(), [&](const Member& m) { return m.key == key; })) {
      throw Wrong{say(Text::tr("{0} is not a field of a history; possible are here: {1}."),
                      inside(place, key), keysOf(members))};
    }
  }
}

template <typename Check>
void eachOf(const Json& object, const std::string& key, const std::string& place, Check check) {
  const auto list = object.find(key);
  if (list == object.end()) {
    return;
  }
  for (std::size_t i = 0; i < list->size(); ++i) {
    check((*list)[i], fmt::format("{}[{}]", inside(place, key), i + 1));
  }
}

void requireWord(const Json& object, const char* key, const std::vector<std::string>& words,
                 const std::string& place) {
  const auto found = object.find(key);
  if (found == object.end() || std::find(words.begin(), words.end(), *found) != words.end()) {
    return;
  }
  throw Wrong{say(Text::tr("{0}: {1} is not one of the words: {2}."), inside(place, key), found->dump(),
                  fmt::join(words, ", "))};
}

void requireFoundSettings(const Json& machine) {
  const Json found = machine.value("as_found", Json::object());
  require(Kind::object, found, "machine.as_found");
  for (const auto& [setting, value] : found.items()) {
    const std::string place = "machine.as_found." + setting;
    if (value.is_object()) {
      requireMembers(value, {{"value", Kind::numberOrText, true}, {"date"}, {"source"}}, place);
    } else {
      require(Kind::numberOrText, value, place);
    }
  }
}

void requireTolerances(const Json& machine) {
  const Json tolerances = machine.value("tolerances", Json::object());
  require(Kind::object, tolerances, "machine.tolerances");
  for (const auto& [result, ends] : tolerances.items()) {
    const bool pair =
        ends.is_array() && ends.size() == 2 && isOf(Kind::number, ends[0]) && isOf(Kind::number, ends[1]);
    if (!pair) {
      throw Wrong{say(Text::tr("machine.tolerances.{0}: two numbers are needed, [lower end, upper end]; "
                               "null leaves an end open."),
                      result)};
    }
  }
}

/// The sheet itself must be readable; keys this program does not know stay as they are.
void requireMachine(const Json& machine) {
  requireFoundSettings(machine);
  requireTolerances(machine);
  Json sheet = machine;
  sheet.erase("as_found");
  sheet.erase("tolerances");
  if (!sheet.contains("name") || !sheet["name"].is_string() || sheet["name"] == Json("")) {
    throw Wrong{Text::tr("machine.name is missing; a text in quotes is needed.")};
  }
  if (const auto read = readMachineSheet(sheet); !read) {
    throw Wrong{read.error()};
  }
}

void requireRun(const Json& run, const std::string& place) {
  requireMembers(run,
                 {{"step", Kind::text, true},
                  {"subject"},
                  {"inputs", Kind::object},
                  {"notes"},
                  {"state"},
                  {"accepted_on"},
                  {"adopted", Kind::list}},
                 place);
  // All but "accepted" follow from the entries and are found again.
  requireWord(run, "state", {"open", "empty", "incomplete", "computed", "accepted"}, place);
  eachOf(run, "adopted", place, [](const Json& adoption, const std::string& where) {
    requireMembers(adoption,
                   {{"setting", Kind::text, true},
                    {"value", Kind::numberOrText, true},
                    {"unit"},
                    {"u", Kind::number},
                    {"U", Kind::number},
                    {"date"}},
                   where);
  });
}

void requireSession(const Json& session, const std::string& place) {
  requireMembers(session,
                 {{"date", Kind::text, true},
                  {"operator"},
                  {"reason"},
                  {"filament"},
                  {"print_hours", Kind::zeroOrMore},
                  {"bench_seconds", Kind::zeroOrMore},
                  {"runs", Kind::list},
                  {"marks", Kind::list}},
                 place);
  eachOf(session, "runs", place, requireRun);
  eachOf(session, "marks", place, [](const Json& mark, const std::string& where) {
    requireMembers(
        mark,
        {{"step", Kind::text, true}, {"kind", Kind::text, true}, {"reason", Kind::text, true}, {"date"}},
        where);
    requireWord(mark, "kind", {"overridden", "not-affected"}, where);
  });
}

void requireFile(const Json& file, const std::string& place) {
  requireMembers(file, {{"file", Kind::text, true}, {"sha256"}}, place);
  const std::string hash = file.contains("sha256") && file["sha256"].is_string() ? file["sha256"] : "";
  if (!hash.empty() && (hash.size() != 64 || hash.find_first_not_of("0123456789abcdef") != hash.npos)) {
    throw Wrong{say(Text::tr("{0}: a SHA-256 of 64 hexadecimal digits in lower case is needed."),
                    inside(place, "sha256"))};
  }
}

void requireHistory(const Json& json) {
  requireMembers(json,
                 {{"fettle", Kind::number, true},
                  {"about"},
                  {"machine", Kind::object, true},
                  {"instruments", Kind::list},
                  {"changes", Kind::list},
                  {"sessions", Kind::list},
                  {"files", Kind::list}},
                 "");
  requireMachine(json["machine"]);
  eachOf(json, "instruments", "", [](const Json& instrument, const std::string& place) {
    requireMembers(instrument,
                   {{"name", Kind::text, true},
                    {"r", Kind::zeroOrMore, true},
                    {"e", Kind::zeroOrMore, true},
                    {"relative", Kind::zeroOrMore},
                    {"unit"}},
                   place);
  });
  eachOf(json, "changes", "", [](const Json& change, const std::string& place) {
    requireMembers(change, {{"date"}, {"group", Kind::text, true}, {"note"}}, place);
  });
  eachOf(json, "sessions", "", requireSession);
  eachOf(json, "files", "", requireFile);
}

}  // namespace

std::optional<std::string> problemOfHistory(const Json& json) {
  try {
    requireHistory(json);
  } catch (const Wrong& wrong) {
    return wrong.sentence;
  }
  return std::nullopt;
}

}  // namespace fettle
