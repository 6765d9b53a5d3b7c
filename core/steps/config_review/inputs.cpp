#include "core/steps/config_review/inputs.h"

#include "core/measure/text.h"
#include "core/steps/config_review/settings.h"

namespace fettle {
namespace {

std::vector<Choice> settingChoices() {
  std::vector<Choice> choices;
  for (const auto& setting : listedSettings()) {
    choices.push_back({setting.description.id, setting.description.label});
  }
  return choices;
}

}  // namespace

void ListedValue::describe(FieldList& columns) {
  columns.text("name", name, Text::tr("Name")).help(Text::tr("As the controller lists it."));
  columns.text("value", value, Text::tr("Value")).help(Text::tr("With its unit, if it is another one."));
  columns.choice("setting", setting, Text::tr("Setting"), settingChoices())
      .help(Text::tr("What it is; blank: not used."));
}

void ConfigReviewInputs::describe(FieldList& fields) {
  fields.table("found", listed, Text::tr("Found"))
      .help(Text::tr("What the controller lists, typed or pasted as name and value."));
}

}  // namespace fettle
