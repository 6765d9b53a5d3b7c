#pragma once
#include <string>
#include <vector>

#include "core/steps/contract/step.h"

namespace fettle {

/// What a result is called on a screen: the label of its description, and in front of it what the
/// <names> of its id stand for: "x, front, 1: mode frequency".
std::string resultLabel(const Step& step, const std::string& id);

/// Results whose ids differ only in what their <names> stand for, side by side: one row for each owner
/// ("x.zv"), one column for each quantity.
struct ResultTable {
  struct Column {
    std::string label, unit;
  };
  std::vector<Column> columns;
  std::vector<std::string> owners;
  std::vector<std::vector<const ResultValue*>> rows;  ///< null where an owner has no such result
};

/// The results of a step as they are best read: single values first, the others as tables.
struct ArrangedResults {
  std::vector<const ResultValue*> single;
  std::vector<ResultTable> tables;
};
ArrangedResults arrangeResults(const Step& step, const StepResult& result);

}  // namespace fettle
