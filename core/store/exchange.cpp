#include "core/store/exchange.h"

#include <algorithm>
#include <filesystem>
#include <functional>
#include <map>
#include <set>

#include "core/history/evaluation.h"
#include "core/history/intake_reference.h"
#include "core/measure/text.h"
#include "core/steps/contract/machine_sheet.h"
#include "core/store/history_form.h"

namespace fettle {
namespace {

/// Gives the records of a form their ids, which rise in the order in which they were entered: as the text
/// says, or by date, within a date as they stand.
class Numbering {
 public:
  explicit Numbering(HistoryForm& form) {
    for (auto& change : form.changes) {
      m_entries.push_back({change.date, change.sequence, &change.id});
    }
    for (auto& session : form.sessions) {
      m_entries.push_back({session.date, session.sequence, &session.id});
      const auto notBefore = [&](const std::string& date) { return std::max(session.date, date); };
      for (auto& run : session.runs) {
        m_entries.push_back({notBefore(run.measuredOn), run.sequence, &run.id});
      }
      for (auto& mark : session.marks) {
        m_entries.push_back({notBefore(mark.date), mark.sequence, &mark.id});
      }
    }
    isAsGiven() ? takeSequence() : takeDates();
  }

 private:
  struct Entry {
    std::string date;
    double sequence;
    RecordId* id;
  };

  /// Whether each record has a number of its own, behind that of the machine.
  bool isAsGiven() const {
    std::set<double> numbers;
    for (const auto& entry : m_entries) {
      numbers.insert(entry.sequence);
    }
    return numbers.size() == m_entries.size() && !numbers.empty() && *numbers.begin() > machineId;
  }

  void takeSequence() {
    for (const auto& entry : m_entries) {
      *entry.id = static_cast<RecordId>(entry.sequence);
    }
  }

  void takeDates() {
    std::stable_sort(m_entries.begin(), m_entries.end(),
                     [](const Entry& a, const Entry& b) { return a.date < b.date; });
    RecordId last = machineId;
    for (const auto& entry : m_entries) {
      *entry.id = ++last;
    }
  }

  static constexpr RecordId machineId = 1;
  std::vector<Entry> m_entries;
};

/// Missing dates are that of the session.
void fillDates(RunForm& run, const std::string& sessionDate) {
  if (run.acceptedOn.empty() && run.state == "accepted") {
    run.acceptedOn = sessionDate;
  }
  for (auto& adoption : run.adopted) {
    if (adoption.date.empty()) {
      adoption.date = run.acceptedOn.empty() ? sessionDate : run.acceptedOn;
    }
  }
}

template <typename T>
void sortById(std::vector<T>& records) {
  std::sort(records.begin(), records.end(), [](const T& a, const T& b) { return a.id < b.id; });
}

History recordsFrom(HistoryForm form, MachineRecord machine) {
  History history;
  const Numbering numbered(form);
  history.machine = std::move(machine);
  history.machine.instruments = std::move(form.instruments);
  for (auto& change : form.changes) {
    history.changes.push_back(std::move(change));
  }
  for (auto& session : form.sessions) {
    for (auto& run : session.runs) {
      run.session = session.id;
      fillDates(run, session.date);
      history.runs.push_back(std::move(run));
    }
    for (auto& mark : session.marks) {
      mark.session = session.id;
      history.marks.push_back(std::move(mark));
    }
    history.sessions.push_back(std::move(session));
  }
  sortById(history.changes);
  sortById(history.sessions);
  sortById(history.runs);
  sortById(history.marks);
  return history;
}

/// A record of the history as its form; the rest of the form stays as it begins.
template <typename Form, typename Record>
Form formOf(const Record& record) {
  Form form;
  static_cast<Record&>(form) = record;
  form.sequence = static_cast<double>(record.id);
  return form;
}

HistoryForm formOf(const History& history) {
  HistoryForm form;
  form.fettle = 1;
  form.machine = machineToForm(history.machine);
  form.instruments = history.machine.instruments;
  for (const auto& change : history.changes) {
    form.changes.push_back(formOf<ChangeForm>(change));
  }
  for (const auto& session : history.sessions) {
    form.sessions.push_back(formOf<SessionForm>(session));
  }
  const auto formOfSession = [&](RecordId id) {
    return std::find_if(form.sessions.begin(), form.sessions.end(),
                        [&](const SessionForm& session) { return session.id == id; });
  };
  for (const auto& run : history.runs) {
    if (const auto session = formOfSession(run.session); session != form.sessions.end()) {
      session->runs.push_back(formOf<RunForm>(run));
      session->runs.back().state = run.accepted() ? "accepted" : "open";
    }
  }
  for (const auto& mark : history.marks) {
    if (const auto session = formOfSession(mark.session); session != form.sessions.end()) {
      session->marks.push_back(formOf<MarkForm>(mark));
    }
  }
  return form;
}

/// One sentence about the files the form lists; nothing when they are as they should be.
std::optional<std::string> problemOfFiles(const HistoryForm& form) {
  for (std::size_t i = 0; i < form.files.size(); ++i) {
    const std::string& hash = form.files[i].sha256;
    if (!hash.empty() &&
        (hash.size() != 64 || hash.find_first_not_of("0123456789abcdef") != std::string::npos)) {
      return say(Text::tr("files[{0}].sha256: a SHA-256 of 64 hexadecimal digits in lower case is needed."),
                 i + 1);
    }
  }
  return std::nullopt;
}

/// Calls `visit` for every reference to a file in a run.
template <typename Visit>
void eachFileOf(StepRun& run, const Visit& visit) {
  eachFileReference(run.inputs, visit);
  for (auto& photo : run.photos) {
    Json reference = {{"file", photo.file}};
    if (!photo.sha256.empty()) {
      reference["sha256"] = photo.sha256;
    }
    visit(reference);
    photo.file = reference["file"].get<std::string>();
    photo.sha256 = reference.value("sha256", "");
  }
}

}  // namespace

ExportedHistory exportHistory(const History& history, const std::string& folder) {
  ExportedHistory exported;
  std::map<std::string, std::string> paths;
  const auto place = [&](Json& reference) {
    if (!reference.contains("sha256")) {
      return;
    }
    const auto hash = reference["sha256"].get<std::string>();
    auto [known, isNew] = paths.try_emplace(
        hash, folder + "/" + hash.substr(0, 12) + "/" + reference["file"].get<std::string>());
    if (isNew) {
      exported.files.push_back({known->second, hash});
    }
    reference["file"] = known->second;
  };

  History copy = history;
  for (auto& run : copy.runs) {
    eachFileOf(run, place);
  }
  HistoryForm form = formOf(copy);
  for (const auto& file : exported.files) {
    form.files.push_back({file.path, file.sha256});
  }
  exported.json = recordToJson(std::move(form));
  return exported;
}

tl::expected<ImportedHistory, std::string> importHistory(
    const Json& json,
    const std::function<tl::expected<std::string, std::string>(const std::string&)>& readFile) {
  if (!json.is_object() || json.value("fettle", Json()) != Json(1)) {
    return tl::unexpected(Text::tr("This is no history of a machine: {\"fettle\": 1, ...} is expected."));
  }
  FieldReader reader = FieldReader::ofRecords();
  auto form = recordFromJson<HistoryForm>(json, reader);
  MachineRecord machine = machineFromForm(form.machine, reader);
  if (auto problem = reader.problem() ? reader.problem() : problemOfFiles(form)) {
    return tl::unexpected(std::move(*problem));
  }
  // The sheet must be readable; keys this program does not know stay as they are.
  if (const auto sheet = readMachineSheet(machine.sheet); !sheet) {
    return tl::unexpected(sheet.error());
  }
  ImportedHistory imported;
  imported.history = recordsFrom(std::move(form), std::move(machine));
  std::string failed;
  const auto take = [&](Json& reference) {
    const auto path = reference["file"].get<std::string>();
    const auto bytes = readFile(path);
    if (!bytes) {
      failed = failed.empty() ? bytes.error() : failed;
      return;
    }
    const std::string hash = sha256(*bytes);
    if (reference.contains("sha256") && reference["sha256"] != Json(hash) && failed.empty()) {
      failed = say(Text::tr("{0} is not the file the history speaks of: its content has changed."), path);
    }
    reference["sha256"] = hash;
    reference["file"] = std::filesystem::path(path).filename().string();
    imported.blobs[hash] = {reference["file"].get<std::string>(), *bytes};
  };
  for (auto& run : imported.history.runs) {
    eachFileOf(run, take);
  }
  if (!failed.empty()) {
    return tl::unexpected(failed);
  }
  return imported;
}

}  // namespace fettle
