#include <CLI/CLI.hpp>
#include <cstdio>
#include <exception>
#include <functional>
#include <new>
#include <string>

#include "app/batch/verbs.h"
#include "core/history/version.h"
#include "core/measure/text.h"

namespace {

/// What is wrong with a command line, in one sentence.
std::string complaintOf(const CLI::App& app, int argc, char** argv) {
  using fettle::say;
  using fettle::Text;
  std::string verbs;
  bool known = false;
  for (const auto* verb : app.get_subcommands([](const CLI::App*) { return true; })) {
    verbs += (verbs.empty() ? "" : ", ") + verb->get_name();
    known = known || (argc > 1 && verb->get_name() == argv[1]);
  }
  if (argc < 2) {
    return say(Text::tr("A verb is needed, one of: {0}."), verbs);
  }
  if (!known) {
    return say(Text::tr("There is no verb {0}; the verbs are: {1}."), argv[1], verbs);
  }
  return say(Text::tr("{0} takes other words than these; {0} --help names them."), argv[1]);
}

}  // namespace

/// The headless program: one verb a call, results on standard output, one sentence on standard error and
/// status 2 when something is wrong.
int main(int argc, char** argv) {
  CLI::App app{"Fettle without a window: describe, evaluate, import, export, report, verify."};
  app.set_version_flag("--version", fettle::programVersion());
  app.require_subcommand(1);
  std::string first;
  std::string second;
  std::string extra;
  std::function<std::string()> verb;

  auto* describe = app.add_subcommand("describe", "the fields and results of a step, as JSON");
  describe->add_option("STEP", first, "key of a step; all when left out");
  bool historyWanted = false;
  describe->add_flag("--history", historyWanted, "the JSON schema of a history instead");
  describe->callback([&] {
    verb = [&] {
      return historyWanted ? fettle::batch::describeHistory() : fettle::batch::describe(first);
    };
  });

  auto* evaluate = app.add_subcommand("evaluate", "the result of a step, as JSON");
  evaluate->add_option("STEP", first, "key of a step")->required();
  evaluate->add_option("INPUTS", second, "inputs as JSON; - for standard input")->required();
  evaluate->add_option("--machine", extra, "machine sheet as JSON");
  evaluate->callback([&] { verb = [&] { return fettle::batch::evaluate(first, second, extra); }; });

  auto* importing = app.add_subcommand("import", "makes a machine file from a history");
  importing->add_option("HISTORY", first, "history as JSON")->required();
  importing->add_option("FILE", second, "machine file to make")->required();
  importing->callback([&] { verb = [&] { return fettle::batch::importFile(first, second); }; });

  auto* exporting = app.add_subcommand("export", "writes the history of a machine file");
  exporting->add_option("FILE", first, "machine file")->required();
  exporting->add_option("HISTORY", second, "JSON to write")->required();
  exporting->callback([&] { verb = [&] { return fettle::batch::exportFile(first, second); }; });

  auto* report = app.add_subcommand("report", "the report as .pdf, .html or .csv");
  report->add_option("FILE", first, "machine file")->required();
  report->add_option("-o,--output", second, "file to write")->required();
  report->callback([&] { verb = [&] { return fettle::batch::report(argc, argv, first, second); }; });

  auto* verify = app.add_subcommand("verify", "integrity, and every stored result computed again");
  verify->add_option("FILE", first, "machine file")->required();
  verify->callback([&] { verb = [&] { return fettle::batch::verify(first); }; });

  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& problem) {
    if (problem.get_exit_code() == 0) {
      return app.exit(problem);  // help and version
    }
    std::fprintf(stderr, "%s\n", complaintOf(app, argc, argv).c_str());
    return 2;
  }
  try {
    std::puts(verb().c_str());
    return 0;
  } catch (const fettle::batch::Failure& failure) {
    std::fprintf(stderr, "%s\n", failure.sentence.c_str());
  } catch (const std::bad_alloc&) {
    std::fprintf(stderr, "%s\n", fettle::Text::tr("There is not enough memory for this.").c_str());
  } catch (const std::exception& bug) {  // its words help whoever mends the program
    std::fprintf(stderr, "Something went wrong inside the program: %s\n", bug.what());
  }
  return 2;
}
