#pragma once
#include <optional>
#include <string>

#include "core/fields/field_list.h"

namespace fettle::ui::tests {

/// Single fields of every kind.
struct EntryInputs {
  double margin = 5;
  std::optional<double> temperature;
  std::optional<double> lines;
  std::string mode = "step";
  std::string scale;
  std::string remark;
  std::optional<double> hysteresis;
  std::optional<bool> dry;
  std::string place;

  void describe(FieldList& fields) {
    fields.number("margin", margin, "margin", "mm").bounds(0, 50).help("Kept free along the edges.");
    fields.number("temperature", temperature, "temperature", "C").bounds(150, 400).required();
    fields.number("lines", lines, "lines", "1").bounds(2, 200).whole();
    fields.choice("mode", mode, "mode", {{"step", "step"}, {"relay", "relay"}, {"hold", "hold"}});
    fields.choice("scale", scale, "scale", {{"fine", "0.001 g"}, {"coarse", "0.01 g"}});
    fields.number("hysteresis", hysteresis, "hysteresis", "C").atLeast(0).onlyWhen("mode", {"relay"});
    fields.text("remark", remark, "remark");
    fields.yesNo("dry", dry, "dried");
    fields.text("place", place, "place");
  }
};

}  // namespace fettle::ui::tests
