#include "ui/editing/run_verbs.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/history/evaluation.h"
#include "core/history/new_run.h"

namespace fettle::ui {
namespace {

QString words(const char* source) {
  return QCoreApplication::translate("RunVerbs", source);
}

bool adoptAs(Document& document, RecordId run, Adoption adoption) {
  return document.editRun(
      run, words("adopt %1").arg(QString::fromStdString(adoption.setting)), [&](StepRun& record) {
        std::erase_if(record.adopted,
                      [&](const Adoption& known) { return known.setting == adoption.setting; });
        record.adopted.push_back(adoption);
      });
}

}  // namespace

bool correctSlip(Document& document, RecordId run, const std::string& key, const Json& value,
                 const QString& reason) {
  return document.editRun(run, words("slip put right"), [&](StepRun& record) {
    const Json before = record.inputs.value(key, Json());
    const auto said = [](const Json& entry) { return entry.is_null() ? std::string() : entry.dump(); };
    setEntry(record, key, value);
    record.corrections.push_back({now(), key, said(before), said(value), reason.toStdString()});
  });
}

bool accept(Document& document, RecordId run, const QString& reason) {
  return document.editRun(run, words("accept"), [&](StepRun& record) {
    record.acceptedOn = now();
    record.acceptReason = reason.toStdString();
    if (const auto known = document.history().evaluated.find(run);
        known != document.history().evaluated.end()) {
      record.signedResult = signedForm(known->second.result);
    }
  });
}

bool withdraw(Document& document, RecordId run) {
  return document.editRun(run, words("withdraw acceptance"), [](StepRun& record) {
    record.acceptedOn.clear();
    record.acceptReason.clear();
    record.signedResult = Json::object();
  });
}

bool adopt(Document& document, RecordId run, const SettingProposal& proposal) {
  return adoptAs(
      document, run,
      {proposal.id, proposal.proposed, proposal.unit, proposal.u, proposal.U, now(), proposal.proposed});
}

bool adoptOwn(Document& document, RecordId run, const SettingProposal& proposal, const SettingValue& value,
              const QString& reason) {
  return adoptAs(document, run,
                 {proposal.id, value, proposal.unit, proposal.u, proposal.U, now(), proposal.proposed,
                  reason.toStdString()});
}

bool setEntered(Document& document, RecordId run, const std::string& setting, bool entered) {
  return document.editRun(run, entered ? words("entered at the machine") : words("not entered after all"),
                          [&](StepRun& record) {
                            for (auto& adoption : record.adopted) {
                              if (adoption.setting == setting) {
                                adoption.enteredOn = entered ? now() : std::string();
                              }
                            }
                          });
}

bool withdrawAdoption(Document& document, RecordId run, const std::string& setting) {
  return document.editRun(
      run, words("take back %1").arg(QString::fromStdString(setting)), [&](StepRun& record) {
        std::erase_if(record.adopted, [&](const Adoption& known) { return known.setting == setting; });
      });
}

}  // namespace fettle::ui
