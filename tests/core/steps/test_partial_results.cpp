#include <QTest>
#include <filesystem>
#include <fstream>

#include "core/history/evaluation.h"
#include "core/intake/file_bytes.h"
#include "core/steps/catalogue.h"
#include "tests/support/described.h"
#include "tests/support/step_bench.h"
#include "tests/support/test_main.h"

using namespace fettle;
using namespace fettle::tests;

namespace {

const std::filesystem::path demoFolder = FETTLE_SOURCE_DIR "/demo-sessions/wagtail";

struct Example {
  std::string step, subject;
  Json inputs;
};

/// The last run of every step and subject of the demo.
std::vector<Example> examples(Json& machine) {
  std::ifstream stream(demoFolder / "wagtail.json");
  const Json history = Json::parse(stream);
  machine = history.at("machine");
  machine.erase("as_found");
  std::map<std::string, Example> last;
  for (const auto& session : history.at("sessions")) {
    for (const auto& run : session.at("runs")) {
      const std::string step = run.at("step"), mode = run["inputs"].value("mode", "");
      last[step + mode] = {step, run.value("subject", ""), run.at("inputs")};
    }
  }
  std::vector<Example> all;
  for (auto& [key, example] : last) {
    all.push_back(std::move(example));
  }
  return all;
}

tl::expected<std::string, std::string> demoBytes(const Json& reference) {
  auto bytes = readFileBytes(demoFolder / reference.at("file").get<std::string>());
  return bytes ? tl::expected<std::string, std::string>(std::move(*bytes))
               : tl::unexpected(bytes.error().sentence);
}

/// What is wrong with an evaluation that must end well: an error, a number that is not finite, a result
/// without value and reason.
QString unsound(const Step& step, const tl::expected<StepResult, std::string>& result) {
  if (!result) {
    return "refused as a whole: " + QString::fromStdString(result.error());
  }
  const QString problems = undescribed(step, *result) + unsoundCharts(*result);
  const Json json = toJson(*result);
  return json == Json::parse(json.dump()) ? problems : problems + " a number that is not finite";
}

/// Rows of large tables and of captures are tried one of so many: each costs an evaluation.
std::vector<std::size_t> triedRows(const Json& rows) {
  return rows.size() > 3 ? std::vector<std::size_t>{0, rows.size() - 1} : std::vector<std::size_t>{0};
}

}  // namespace

/// That a blank field, an excluded row or a bad cell costs only the results that need it, for every step of
/// the catalogue, starting from the readings of the demo machine.
class TestPartialResults : public QObject {
  Q_OBJECT

  Json m_machine;
  std::vector<Example> m_examples;
  IntakeFiles m_files{&demoBytes};

  tl::expected<StepResult, std::string> evaluated(const Example& example, const Json& inputs) {
    return evaluated(example, inputs, m_machine);
  }

  tl::expected<StepResult, std::string> evaluated(const Example& example, const Json& inputs,
                                                  const Json& sheet) {
    StepContext context;
    context.sheet = readMachineSheet(sheet).value();
    context.subject = example.subject;
    return findStep(example.step)->evaluate(inputs, context, m_files);
  }

 private slots:
  void initTestCase() {
    m_examples = examples(m_machine);
    QVERIFY(m_examples.size() >= 10);
  }

  void theExamplesAreWhole() {
    for (const auto& example : m_examples) {
      const auto result = evaluated(example, example.inputs);
      QVERIFY2(result, result ? "" : (example.step + ": " + result.error()).c_str());
      QVERIFY2(result->complete, example.step.c_str());
      QVERIFY2(!findingOf(*result, "refused"), example.step.c_str());
    }
  }

  /// A run keeps only the sheet keys its step declares, so the others must not matter.
  void theSheetKeysAStepReadsAreDeclared() {
    for (const auto& example : m_examples) {
      const Step& step = *findStep(example.step);
      Json declared{{"name", "-"}};
      for (const auto& [key, value] : m_machine.items()) {
        if (step.readsSheetKey(key)) {
          declared[key] = value;
        }
      }
      const auto whole = evaluated(example, example.inputs);
      const auto part = evaluated(example, example.inputs, declared);
      QVERIFY2(toJson(*whole) == toJson(*part), example.step.c_str());
    }
  }

  void aBlankFieldIsNoEnd() {
    for (const auto& example : m_examples) {
      for (const auto& [key, value] : example.inputs.items()) {
        Json inputs = example.inputs;
        inputs[key] = nullptr;
        const QString problem = unsound(*findStep(example.step), evaluated(example, inputs));
        QVERIFY2(problem.isEmpty(),
                 qPrintable(QString::fromStdString(example.step + ", " + key + ": ") + problem));
      }
    }
  }

  void anExcludedRowIsNoEnd() {
    for (const auto& example : m_examples) {
      for (const auto& [key, value] : example.inputs.items()) {
        if (!value.is_array() || !value.front().is_object()) {
          continue;
        }
        for (const std::size_t row : triedRows(value)) {
          Json inputs = example.inputs;
          inputs[key][row]["excluded"] = "tried";
          const QString problem = unsound(*findStep(example.step), evaluated(example, inputs));
          QVERIFY2(problem.isEmpty(),
                   qPrintable(QString::fromStdString(example.step + ", " + key + ": ") + problem));
        }
      }
    }
  }

  void aBadCellIsAFindingWithItsPlace() {
    for (const auto& example : m_examples) {
      const Step& step = *findStep(example.step);
      for (const auto& [key, value] : example.inputs.items()) {
        const Field* field = findField(step.fields, key);
        if (!field || field->kind != FieldKind::table || !value.is_array()) {
          continue;
        }
        for (const std::size_t row : triedRows(value)) {
          for (const auto& [column, cell] : value[row].items()) {
            if (!cell.is_number()) {
              continue;
            }
            Json inputs = example.inputs;
            inputs[key][row][column] = "eighty";
            const auto result = evaluated(example, inputs);
            const std::string path = fmt::format("{}[{}].{}", key, row + 1, column);
            QVERIFY2(unsound(step, result).isEmpty(),
                     qPrintable(QString::fromStdString(path + ": ") + unsound(step, result)));
            const Finding* refused = findingOf(*result, "refused");
            const bool isText = findField(field->columns, column)->kind == FieldKind::text;
            QVERIFY2(isText || (refused && refused->at == path && refused->severity == Severity::fault),
                     path.c_str());
          }
        }
      }
    }
  }

  void aBadNumberIsAFindingAndNothingIsGuessed() {
    for (const auto& example : m_examples) {
      for (const auto& field : findStep(example.step)->fields) {
        if (field.kind != FieldKind::number) {
          continue;
        }
        Json inputs = example.inputs;
        inputs[field.key] = "eighty";
        const auto result = evaluated(example, inputs);
        const QString problem = unsound(*findStep(example.step), result);
        QVERIFY2(problem.isEmpty(),
                 qPrintable(QString::fromStdString(example.step + ", " + field.key + ": ") + problem));
        const Finding* refused = findingOf(*result, "refused");
        QVERIFY2(refused && refused->at == field.key, field.key.c_str());
      }
    }
  }
};

FETTLE_TEST(TestPartialResults)
#include "test_partial_results.moc"
