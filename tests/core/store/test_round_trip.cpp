#include <QTest>
#include <random>

#include "core/history/evaluation.h"
#include "core/store/exchange.h"
#include "tests/core/store/store_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

/// Makes values for whatever fields a record describes, so that a new field is tried without a word here.
class Generator {
 public:
  explicit Generator(unsigned seed) : m_random(seed) {}

  template <typename Record>
  Record record() {
    FieldReader reader = FieldReader::ofRecords();
    Record made = recordFromJson<Record>(valuesOf(describedFields<Record>()), reader);
    if (const auto problem = reader.problem()) {
      throw std::logic_error(*problem);
    }
    return made;
  }

  int upTo(int most) { return std::uniform_int_distribution<int>(0, most)(m_random); }

 private:
  Json valuesOf(const std::vector<Field>& fields) {
    Json values = Json::object();
    for (const auto& field : fields) {
      // An import fills a blank date with that of the session.
      const bool always = field.required || field.key.find("date") != std::string::npos ||
                          field.key == "accepted_on" || field.key == "sha256";
      if (always || upTo(3) > 0) {
        values[field.key] = valueOf(field);
      }
    }
    return values;
  }

  Json valueOf(const Field& field) {
    switch (field.kind) {
      case FieldKind::number:
        return numberOf(field);
      case FieldKind::choice:
        return field.choices[static_cast<std::size_t>(upTo(static_cast<int>(field.choices.size()) - 1))]
            .key;
      case FieldKind::yesNo:
        return upTo(1) == 1;
      case FieldKind::value:
        return upTo(1) == 1 ? Json(numberOf(field)) : Json(text());
      case FieldKind::values:
        return {{text(), numberOf(field)}, {text(), text()}};
      case FieldKind::object:
        return {{text(), {numberOf(field), nullptr, true}}, {"inner", {{text(), text()}}}};
      case FieldKind::list:
        return records(field, Json::array());
      case FieldKind::map:
        return records(field, Json::object());
      default:
        return field.key == "sha256" ? sha256("bytes") : text();
    }
  }

  Json records(const Field& field, Json all) {
    for (int i = upTo(3); i > 0; --i) {
      if (all.is_array()) {
        all.push_back(valuesOf(field.columns));
      } else {
        all[text()] = valuesOf(field.columns);
      }
    }
    return all;
  }

  double numberOf(const Field& field) {
    const double number = field.whole ? upTo(1000) : std::normal_distribution<double>(0, 1e3)(m_random) / 3;
    return field.minimum ? std::max(*field.minimum, std::abs(number)) : number;
  }

  std::string text() {
    static const char* const parts[] = {"a",  "Ö", "测", "🛠", "\n", "\"",
                                        "\\", "'", " ",  "7",    ".",  ";--"};
    std::string made = "t";
    for (int i = upTo(12); i > 0; --i) {
      made += parts[upTo(std::size(parts) - 1)];
    }
    return made;
  }

  std::mt19937 m_random;
};

/// Ids rise in the order of entry, across all kinds of records.
History generatedHistory(unsigned seed) {
  Generator make(seed);
  History history;
  history.machine = make.record<MachineRecord>();
  history.machine.sheet = {{"name", "generated"}, {"nozzle_mm", 0.4}, {"later program's key", 3}};
  RecordId id = 1;
  const int sessions = make.upTo(4);
  for (int s = 0; s < sessions; ++s) {
    history.sessions.push_back(make.record<Session>());
    const RecordId session = history.sessions.back().id = ++id;
    for (int i = make.upTo(8); i > 0; --i) {
      switch (make.upTo(2)) {
        case 0:
          history.changes.push_back(make.record<PartChange>());
          history.changes.back().id = ++id;
          break;
        case 1:
          history.runs.push_back(make.record<StepRun>());
          history.runs.back().id = ++id;
          history.runs.back().session = session;
          break;
        default:
          history.marks.push_back(make.record<StepMark>());
          history.marks.back().id = ++id;
          history.marks.back().session = session;
      }
    }
  }
  return history;
}

tl::expected<std::string, std::string> sameBytes(const std::string&) {
  return "bytes";
}

}  // namespace

/// A history keeps every field it has through the machine file and the text. Expected: what was put in.
class TestRoundTrip : public QObject {
  Q_OBJECT

 private slots:
  void keepsEveryField_data() {
    QTest::addColumn<unsigned>("seed");
    for (unsigned seed = 1; seed <= 40; ++seed) {
      QTest::addRow("seed %u", seed) << seed;
    }
  }

  void keepsEveryField() {
    QFETCH(unsigned, seed);
    const History history = generatedHistory(seed);
    const Folder folder;
    {
      OPENED(file, MachineFile::create(folder.path("a.fettle"), history));
      SAME_HISTORY(file->history(), history);
    }
    OPENED(again, MachineFile::open(folder.path("a.fettle"), true));
    SAME_HISTORY(again->history(), history);

    ExportedHistory exported = exportHistory(again->history(), "files");
    const auto imported = importHistory(Json::parse(exported.json.dump()), sameBytes);
    QVERIFY2(imported, imported ? "" : imported.error().c_str());
    History back = imported->history;
    for (auto& run : back.runs) {  // the folder of its files is the text's, not the record's
      for (auto& photo : run.photos) {
        photo.file =
            history.run(run.id)->photos.at(static_cast<std::size_t>(&photo - run.photos.data())).file;
      }
    }
    SAME_HISTORY(back, history);
  }

  /// A field that was added to the format since the file was made: the file is opened, read and written.
  void growsAFileOfAnEarlierDay() {
    const Folder folder;
    const std::string path = folder.path("a.fettle");
    History history = generatedHistory(3);
    history.changes.push_back({history.nextId(), "2026-01-02", "nozzle", "hard"});
    { OPENED(file, MachineFile::create(path, history)); }
    runSql(path,
           "ALTER TABLE step_runs DROP COLUMN accept_reason; DROP TABLE step_runs_photos;"
           "ALTER TABLE part_changes DROP COLUMN entered_on;");
    for (auto& run : history.runs) {
      run.acceptReason.clear();
      run.photos.clear();
    }
    for (auto& change : history.changes) {
      change.enteredOn.clear();
    }
    OPENED(file, MachineFile::open(path));
    QCOMPARE(file->readOnly(), ReadOnlyReason::none);
    SAME_HISTORY(file->history(), history);
    PartChange change = history.changes.back();
    change.enteredOn = "2026-01-03";
    QVERIFY(file->apply({history.changes.back(), change, ""}));
    QCOMPARE(askSql(path, "SELECT max(entered_on) FROM part_changes"), std::string("2026-01-03"));
  }
};

FETTLE_TEST(TestRoundTrip)
#include "test_round_trip.moc"
