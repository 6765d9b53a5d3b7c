#include "ui/bench/intake_flow.h"

#include <QFileInfo>
#include <QMessageBox>
#include <QRegularExpression>

#include "core/intake/file_bytes.h"
#include "ui/forms/intake_dialog.h"

namespace fettle::ui {
namespace {

struct Place {
  std::string key;
  int row = 0;  ///< from 1; 0: the whole field
  std::string column;
};

Place placeOf(const QString& path) {
  static const QRegularExpression form(QStringLiteral("^([^\\[]+)(?:\\[(\\d+)\\]\\.(.+))?$"));
  const auto match = form.match(path);
  return {match.captured(1).toStdString(), match.captured(2).toInt(), match.captured(3).toStdString()};
}

}  // namespace

const Field* fieldAt(const std::vector<Field>& fields, const QString& path) {
  const Place place = placeOf(path);
  const Field* field = findField(fields, place.key);
  return field && place.row > 0 ? findField(field->columns, place.column) : field;
}

Json withValueAt(const Json& inputs, const QString& path, const Json& value) {
  const Place place = placeOf(path);
  if (place.row == 0) {
    return value;
  }
  Json rows = inputs.value(place.key, Json::array());
  while (rows.size() < static_cast<std::size_t>(place.row)) {
    rows.push_back(Json::object());
  }
  rows[static_cast<std::size_t>(place.row - 1)][place.column] = value;
  return rows;
}

bool takeFile(Document& document, const Step& step, const StepRun* run, const QString& path,
              const QString& fileName, QWidget* parent) {
  const Field* field = fieldAt(step.fields, path);
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
  const std::string key = placeOf(path).key;
  const Json whole = withValueAt(run ? run->inputs : Json::object(), path, value);
  return document.setInput(step.key, run ? run->id : 0, key, whole, QFileInfo(fileName).fileName());
}

}  // namespace fettle::ui
