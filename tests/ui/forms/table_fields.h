#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/fields/field_list.h"

namespace fettle::ui::tests {

struct MarkRow : TableRow {
  std::optional<double> x, y;
  std::string kind;
  std::optional<double> from;
  std::optional<bool> ok;
  std::string remark;
  void describe(FieldList& fields) {
    fields.number("x", x, "probe x", "mm").required().bounds(-500, 500).readWith(instruments::caliper());
    fields.number("y", y, "probe y", "mm").required().readWith(instruments::caliper());
    fields.choice("kind", kind, "kind", {{"tap", "tap"}, {"sweep", "sweep"}, {"run", "run"}});
    fields.number("from", from, "sweep from", "Hz").atLeast(0).onlyWhen("kind", {"sweep"});
    fields.yesNo("ok", ok, "ok");
    fields.text("remark", remark, "remark");
  }
};

struct MassRow : TableRow {
  std::optional<double> mass;
  void describe(FieldList& fields) { fields.number("mass", mass, "mass", "g").required(); }
};

struct FileRow : TableRow {
  std::string axis;
  CapturePointer capture;
  void describe(FieldList& fields) {
    fields.choice("axis", axis, "axis", {{"x", "x"}, {"y", "y"}});
    fields.capture("capture", capture, "capture",
                   [](FieldList& columns) { columns.column("time_s", "time", "s").required(); });
  }
};

/// Tables of several columns, of one, and of files.
struct TableInputs {
  std::vector<MarkRow> marks;
  std::vector<MassRow> masses;
  std::vector<FileRow> captures;
  double margin = 5;
  void describe(FieldList& fields) {
    fields.table("marks", marks, "marks");
    fields.table("masses", masses, "masses");
    fields.table("captures", captures, "captures");
    fields.number("margin", margin, "margin", "mm");
  }
};

inline const Json threeMarks = {
    {{"x", 1.5}, {"y", 2.0}}, {{"x", 3.0}, {"y", 4.0}}, {{"x", 5.0}, {"y", 6.0}}};

inline Json masses(int count) {
  Json rows = Json::array();
  for (int i = 0; i < count; ++i) {
    rows.push_back({{"mass", i + 1.0}});
  }
  return rows;
}

enum Column { xColumn, yColumn, kindColumn, fromColumn, okColumn, remarkColumn };

}  // namespace fettle::ui::tests
