#pragma once
#include <QString>

#include "core/history/evaluation.h"
#include "core/history/history.h"
#include "core/report/report.h"
#include "tests/support/step_bench.h"

namespace fettle::tests {

/// A machine that was never built, with two sessions: a probe position with one mark left out and one
/// setting adopted, then a change of a part, an override and a refused run.
inline History smallHistory() {
  History history;
  history.machine.sheet = {{"name", "Test rig"},  {"motion", "cartesian"}, {"travel_min_x", 0},
                           {"travel_max_x", 220}, {"travel_min_y", 0},     {"travel_max_y", 220},
                           {"bed_min_x", 0},      {"bed_max_x", 200},      {"bed_min_y", 0},
                           {"bed_max_y", 200}};
  history.machine.asFound["probe_offset_x"] = {{30.0, {}}, "2026-03-01T08:00:00", "typed from the screen"};
  history.machine.asFound["probe_offset_y"] = {{-8.0, {}}, "2026-03-01T08:00:00", ""};
  history.sessions = {{1, "2026-03-01T09:00:00", "A. Person", "first set-up", "PLA white", 0.0, 3900},
                      {2, "2026-04-02T10:30:00", "A. Person", "new probe, \"stiffer\"", "", 12.5, 0}};
  StepRun run;
  run.id = 10;
  run.session = 1;
  run.step = "probe-position";
  run.inputs = {{"marks",
                 {{{"nozzle_x", 100.0}, {"nozzle_y", 100.0}, {"probe_x", 70.0}, {"probe_y", 108.2}},
                  {{"nozzle_x", 50.1}, {"nozzle_y", 60.0}, {"probe_x", 20.0}, {"probe_y", 68.1}},
                  {{"nozzle_x", 150.0}, {"nozzle_y", 60.0}, {"probe_x", 119.9}, {"probe_y", 68.2}},
                  {{"nozzle_x", 150.0},
                   {"nozzle_y", 160.0},
                   {"probe_x", 112.0},
                   {"probe_y", 168.0},
                   {"excluded", "slipped, saw it move"}}}},
                {"margin", 6}};
  run.notes = "Marks drawn on tape.\nProbe cold.";
  run.acceptedOn = "2026-03-01T09:40:00";
  run.adopted = {{"probe_offset_x", {30.07, {}}, "mm", 0.25, 0.5, "2026-03-01T09:41:00"}};
  history.runs.push_back(run);
  run.id = 11;
  run.session = 2;
  run.inputs = {{"marks", {{{"nozzle_x", "a lot"}}}}};
  run.notes.clear();
  run.acceptedOn.clear();
  run.adopted.clear();
  history.runs.push_back(run);
  history.changes = {{20, "2026-04-01T18:00:00", "probe", "new probe"}};
  history.marks = {
      {30, 2, "probe-position", StepMark::Kind::overridden, "bench was supervised", "2026-04-02T10:35:00"}};
  NoFiles files;
  for (const auto& one : history.runs) {
    history.evaluated[one.id] = evaluateRun(history, one, files);
  }
  return history;
}

/// A block as text, one line for each line or row, cells parted by " | ".
inline QString asText(const ReportBlock& block) {
  QString text;
  const auto line = [&](const std::string& words) { text += QString::fromStdString(words) + '\n'; };
  if (const auto* heading = std::get_if<Heading>(&block)) {
    line(std::string(static_cast<std::size_t>(heading->level), '#') + " " + heading->text);
  } else if (const auto* paragraph = std::get_if<Paragraph>(&block)) {
    line((paragraph->dim ? "dim: " : "") + paragraph->text);
  } else if (const auto* caution = std::get_if<Caution>(&block)) {
    line("caution: " + caution->text);
  } else if (const auto* facts = std::get_if<KeyValues>(&block)) {
    for (const auto& [name, value] : facts->pairs) {
      line(name + ": " + value);
    }
  } else if (const auto* table = std::get_if<ReportTable>(&block)) {
    std::string heads;
    for (const auto& column : table->columns) {
      heads += (heads.empty() ? "" : " | ") + column.head + (column.figures ? ">" : "");
    }
    line("| " + heads);
    for (const auto& row : table->rows) {
      std::string cells;
      for (const auto& cell : row.cells) {
        cells += (cells.empty() ? "" : " | ") + (cell.empty() ? "." : cell);
      }
      line((row.struck ? "struck " : "- ") + cells);
    }
  } else if (const auto* finding = std::get_if<Finding>(&block)) {
    line(severityKey(finding->severity) + " " + finding->code + ": " + finding->text);
  } else if (const auto* chart = std::get_if<Chart>(&block)) {
    line("chart " + chartKindKey(chart->kind) + ": " + chart->title);
  } else {
    line("page break");
  }
  return text;
}

inline QString asText(const ReportBlocks& blocks) {
  QString text;
  for (const auto& block : blocks) {
    text += asText(block);
  }
  return text;
}

}  // namespace fettle::tests
