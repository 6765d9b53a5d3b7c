#include "core/store/history_form.h"

#include "core/fields/json_schema.h"
#include "core/measure/text.h"
#include "core/steps/contract/machine_sheet.h"

namespace fettle {
namespace {

void describeSequence(double& sequence, FieldList& fields) {
  fields.number("sequence", sequence, Text::tr("Sequence"), "1")
      .atLeast(0)
      .whole()
      .help(Text::tr("rises in the order in which the records were entered"));
}

void checkName(const Json& sheet, FieldReader& reader) {
  Field name;
  name.key = "name";
  name.kind = FieldKind::text;
  if (!sheet.contains("name") || !sheet["name"].is_string() || isBlankValue(sheet["name"])) {
    reader.noteMissing(name);
  }
}

}  // namespace

void RunForm::describe(FieldList& fields) {
  StepRun::describe(fields);
  describeSequence(sequence, fields);
  fields
      .choice("state", state, Text::tr("State"),
              {{"open", "open"},
               {"empty", "empty"},
               {"incomplete", "incomplete"},
               {"computed", "computed"},
               {"accepted", "accepted"}})
      .help(Text::tr("all but accepted follow from the readings and are found again"));
}

void MarkForm::describe(FieldList& fields) {
  StepMark::describe(fields);
  describeSequence(sequence, fields);
}

void ChangeForm::describe(FieldList& fields) {
  PartChange::describe(fields);
  describeSequence(sequence, fields);
}

void SessionForm::describe(FieldList& fields) {
  Session::describe(fields);
  describeSequence(sequence, fields);
  fields.list("runs", runs, Text::tr("Runs"));
  fields.list("marks", marks, Text::tr("Decisions about steps"));
}

void FileForm::describe(FieldList& fields) {
  fields.text("file", file, Text::tr("File")).required().help(Text::tr("path relative to this text"));
  fields.text("sha256", sha256, Text::tr("SHA-256"));
}

void HistoryForm::describe(FieldList& fields) {
  fields.number("fettle", fettle, Text::tr("Version of this form"), "1").required();
  fields.text("about", about, Text::tr("A word to the reader")).help(Text::tr("it is not imported"));
  fields.object("machine", machine, Text::tr("Machine")).required();
  fields.list("instruments", instruments, Text::tr("Instruments"));
  fields.list("changes", changes, Text::tr("Part changes"));
  fields.list("sessions", sessions, Text::tr("Sessions"));
  fields.list("files", files, Text::tr("Files"))
      .help(Text::tr("captures, tables and pictures beside this text"));
}

Json machineToForm(const MachineRecord& machine) {
  MachineRecord copy = machine;
  Json json = machine.sheet;
  FieldList rest;
  copy.describeBesideSheet(rest);
  json.update(rest.written());
  return json;
}

MachineRecord machineFromForm(const Json& json, FieldReader& reader) {
  MachineRecord machine;
  FieldList list;
  machine.describeBesideSheet(list);
  Json rest = Json::object();
  for (const auto& [key, value] : json.items()) {
    (findField(list.fields(), key) ? rest : machine.sheet)[key] = value;
  }
  reader.inside("machine", [&] {
    list.read(rest, reader);
    checkName(machine.sheet, reader);
  });
  return machine;
}

Json historySchema() {
  Json schema = {{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                 {"$id", "urn:fettle:history:1"},
                 {"title", "History of one machine"},
                 {"description",
                  "What Fettle imports and exports. Signed results are kept; results of today are "
                  "computed again on import."}};
  schema.update(schemaOf(describedFields<HistoryForm>()));
  schema["properties"]["fettle"] = {{"const", 1}, {"description", "version of this form"}};
  MachineRecord machine;
  FieldList rest;
  machine.describeBesideSheet(rest);
  Json sheet = schemaOf(machineSheetFields());
  sheet["properties"].update(schemaOf(rest.fields())["properties"]);
  sheet["description"] =
      "The machine sheet, one flat object; dots stay in keys. Every value may be left out but the name.";
  sheet["additionalProperties"] = {{"type", {"string", "number", "boolean", "null"}}};
  schema["properties"]["machine"] = std::move(sheet);
  return schema;
}

}  // namespace fettle
