#include "tests/support/test_main.h"

#include <QTest>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <string>
#include <vector>

#ifdef FETTLE_TEST_GUI
#include <QApplication>
using Application = QApplication;
#else
#include <QCoreApplication>
using Application = QCoreApplication;
#endif

namespace fettle::tests {
namespace {

struct Entry {
  std::string name;
  std::function<std::unique_ptr<QObject>()> make;
};

std::vector<Entry>& entries() {
  static std::vector<Entry> all;
  return all;
}

}  // namespace

Registration::Registration(const char* file, std::function<std::unique_ptr<QObject>()> make) {
  entries().push_back({std::filesystem::path(file).stem().string(), std::move(make)});
}

}  // namespace fettle::tests

/// usage: test_program [STEM [Qt Test options]]; without a stem every class runs.
int main(int argc, char** argv) {
  Application application(argc, argv);
  Application::setOrganizationName("fettle-tests");
  const std::string wanted = argc > 1 && argv[1][0] != '-' ? argv[1] : "";
  std::vector<char*> arguments{argv[0]};
  for (int i = wanted.empty() ? 1 : 2; i < argc; ++i) {
    arguments.push_back(argv[i]);
  }
  int failures = 0;
  bool found = false;
  for (const auto& entry : fettle::tests::entries()) {
    if (!wanted.empty() && entry.name != wanted) {
      continue;
    }
    found = true;
    const auto test = entry.make();
    failures += QTest::qExec(test.get(), static_cast<int>(arguments.size()), arguments.data());
  }
  if (!found) {
    std::fprintf(stderr, "there is no test class in a file named '%s.cpp'\n", wanted.c_str());
    return 1;
  }
  return failures == 0 ? 0 : 1;
}
