#include "core/history/history.h"
#include "core/measure/text.h"

// The fields of the records, named once.

namespace fettle {
namespace {

void describeChecksum(std::string& member, FieldList& fields) {
  fields.text("checksum", member, Text::tr("Checksum"))
      .help(Text::tr("over the content of the record; it is no signature"));
}

}  // namespace

void FoundSetting::describe(FieldList& fields) {
  fields.value("value", value, Text::tr("Value"));
  fields.text("date", date, Text::tr("Date"));
  fields.text("source", source, Text::tr("Where it was read"));
}

void MachineRecord::describe(FieldList& fields) {
  fields.object("sheet", sheet, Text::tr("Machine sheet"));
  fields.list("instruments", instruments, Text::tr("Instruments"));
  describeBesideSheet(fields);
}

void MachineRecord::describeBesideSheet(FieldList& fields) {
  fields.map("as_found", asFound, Text::tr("As found"))
      .help(Text::tr("what the controller was delivered with, by setting"));
  fields.map("tolerances", tolerances, Text::tr("Tolerances"))
      .help(Text::tr("those the user changed, by step.result; a blank end is open"));
  describeChecksum(checksum, fields);
}

void PartChange::describe(FieldList& fields) {
  fields.text("date", date, Text::tr("Date"));
  fields.text("group", group, Text::tr("Part group")).required();
  fields.text("note", note, Text::tr("Note"));
  fields.text("entered_on", enteredOn, Text::tr("Entered on"));
  describeChecksum(checksum, fields);
}

void IssuedReport::describe(FieldList& fields) {
  fields.number("number", number, Text::tr("Number"), "1").atLeast(0).whole();
  fields.text("date", date, Text::tr("Date"));
  fields.text("sha256", sha256, Text::tr("SHA-256 of the file"));
}

void Session::describe(FieldList& fields) {
  fields.text("date", date, Text::tr("Date")).required();
  fields.text("operator", person, Text::tr("Operator"));
  fields.text("reason", reason, Text::tr("Reason"));
  fields.text("filament", filament, Text::tr("Filament"));
  fields.number("print_hours", printHours, Text::tr("Print hours so far"), "").atLeast(0);
  fields.number("bench_seconds", benchSeconds, Text::tr("Time at the bench"), "s").atLeast(0);
  fields.text("time_zone", timeZone, Text::tr("Time zone")).help(Text::tr("of its dates, as +01:00"));
  fields.list("reports", reports, Text::tr("Reports handed over"));
  describeChecksum(checksum, fields);
}

void Adoption::describe(FieldList& fields) {
  fields.text("setting", setting, Text::tr("Setting")).required();
  fields.value("value", value, Text::tr("Value")).required();
  fields.text("unit", unit, Text::tr("Unit"));
  fields.number("u", u, Text::tr("Standard uncertainty"), "");
  fields.number("U", U, Text::tr("Expanded uncertainty"), "");
  fields.text("date", date, Text::tr("Date"));
  fields.value("proposed", proposed, Text::tr("Proposed value"));
  fields.text("reason", reason, Text::tr("Why another value than proposed"));
  fields.text("entered_on", enteredOn, Text::tr("Entered at the machine on"));
}

void Correction::describe(FieldList& fields) {
  fields.text("date", date, Text::tr("Date"));
  fields.text("field", field, Text::tr("Field")).required();
  fields.text("before", before, Text::tr("Before"));
  fields.text("after", after, Text::tr("After"));
  fields.text("reason", reason, Text::tr("Reason")).required();
}

void Photo::describe(FieldList& fields) {
  fields.text("file", file, Text::tr("File")).required();
  fields.text("sha256", sha256, Text::tr("SHA-256"));
  fields.text("caption", caption, Text::tr("Caption"));
}

void StepRun::describe(FieldList& fields) {
  fields.text("step", step, Text::tr("Step")).required().help(Text::tr("see fettle-batch describe"));
  fields.text("subject", subject, Text::tr("What it is about"))
      .help(Text::tr("a heater or an axis, or empty"));
  fields.object("inputs", inputs, Text::tr("Readings"))
      .help(Text::tr("by field key: see fettle-batch describe STEP"));
  fields.text("notes", notes, Text::tr("Notes"));
  fields.text("accepted_on", acceptedOn, Text::tr("Accepted on"));
  fields.text("accept_reason", acceptReason, Text::tr("Reason of the acceptance"));
  fields.list("adopted", adopted, Text::tr("Settings as left"));
  fields.text("measured_on", measuredOn, Text::tr("Measured on"));
  fields.choice("role", role, Text::tr("Role"),
                {{RunRole::arrival, {"arrival", Text::tr("as it came")}},
                 {RunRole::corrected, {"corrected", Text::tr("after a correction")}},
                 {RunRole::repeat, {"repeat", Text::tr("repeat")}}});
  fields.values("in_force", inForce, Text::tr("Settings in force while measuring"));
  fields.object("signed", signedResult, Text::tr("Result as accepted"));
  fields.list("corrections", corrections, Text::tr("Slips put right"));
  fields.list("photos", photos, Text::tr("Photos"));
  fields.object("piece", piece, Text::tr("Test piece"));
  describeChecksum(checksum, fields);
}

void StepMark::describe(FieldList& fields) {
  fields.text("step", step, Text::tr("Step")).required();
  fields.choice("kind", kind, Text::tr("Decision"),
                {{Kind::overridden, {"overridden", Text::tr("overridden")}},
                 {Kind::notAffected, {"not-affected", Text::tr("not affected")}}});
  fields.text("reason", reason, Text::tr("Reason"));
  fields.text("date", date, Text::tr("Date"));
  describeChecksum(checksum, fields);
}

}  // namespace fettle
