#pragma once
#include "ui/editing/document.h"

namespace fettle::ui {

// Verbs on one run: each is one edit of the document, and answers as its verbs do.

/// Puts a slip of the keyboard right in a run that stands as evidence; it stays accepted as it was
/// signed.
bool correctSlip(Document& document, RecordId run, const std::string& key, const Json& value,
                 const QString& reason);
/// Accepts and signs the result as it is now.
bool accept(Document& document, RecordId run, const QString& reason = {});
bool withdraw(Document& document, RecordId run);
bool adopt(Document& document, RecordId run, const SettingProposal& proposal);
/// Adopts another value than the proposed one.
bool adoptOwn(Document& document, RecordId run, const SettingProposal& proposal, const SettingValue& value,
              const QString& reason);
/// Says that an adopted value stands in the machine now; `entered` false takes that back.
bool setEntered(Document& document, RecordId run, const std::string& setting, bool entered);
bool withdrawAdoption(Document& document, RecordId run, const std::string& setting);

}  // namespace fettle::ui
