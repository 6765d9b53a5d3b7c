#include "ui/bench/intake_flow.h"

#include <QFileInfo>
#include <QMessageBox>

#include "core/intake/file_bytes.h"
#include "ui/forms/input_path.h"
#include "ui/forms/intake_dialog.h"

namespace fettle::ui {
namespace {

/// The field at a place of the inputs, or null.
const Field* fieldAt(const std::vector<Field>& fields, const InputPath& place) {
  const Field* field = findField(fields, place.key);
  return field && place.row > 0 ? findField(field->columns, place.column) : field;
}

}  // namespace

bool takeFile(Document& document, const Step& step, const StepRun* run, const QString& path,
              const QString& fileName, QWidget* parent) {
  const InputPath place = InputPath::fromText(path);
  const Field* field = fieldAt(step.fields, place);
  const auto refuse = [&](const std::string& sentence) {
    QMessageBox::warning(parent, QFileInfo(fileName).fileName(), QString::fromStdString(sentence));
    return false;
  };
  if (!field || !document.editable()) {
    return field ? refuse(document.whyNotEditable().toStdString()) : false;
  }
  const auto bytes = readFileBytes(fileName.toStdString());
  if (!bytes) {
    return refuse(bytes.error().sentence);
  }
  IntakeDialog dialog(*field, QFileInfo(fileName).fileName(), *bytes, parent);
  if (dialog.exec() != QDialog::Accepted) {
    return false;
  }
  Json reference = dialog.reference();
  reference["file"] = QFileInfo(fileName).fileName().toStdString();
  if (field->kind == FieldKind::capture) {
    const auto hash = document.file().addBlob(*bytes, reference["file"].get<std::string>());
    if (!hash) {
      return refuse(hash.error());
    }
    reference["sha256"] = *hash;
  }
  // A table or grid becomes values, so that single cells can be mended; a capture stays a file.
  const Json value = field->kind == FieldKind::capture ? reference : dialog.value();
  const Json whole = withValueAt(run ? run->inputs : Json::object(), place, value);
  return document.setInput(step.key, run ? run->id : 0, place.key, whole, QFileInfo(fileName).fileName());
}

}  // namespace fettle::ui
