#include "ui/forms/intake_memory.h"

#include <QCryptographicHash>
#include <QSettings>

namespace fettle::ui {
namespace {

QString keyOf(const Field& field, const std::string& shape) {
  // A hash, because headers may hold any character and settings are sorted by their keys.
  const auto hash = QCryptographicHash::hash(QByteArray::fromStdString(shape), QCryptographicHash::Sha1);
  return QStringLiteral("intake/%1/%2").arg(QString::fromStdString(field.key), hash.toHex());
}

}  // namespace

Json rememberedIntake(const Field& field, const std::string& shape) {
  const QByteArray text = QSettings().value(keyOf(field, shape)).toByteArray();
  const Json reference = Json::parse(text.begin(), text.end(), nullptr, false);
  return reference.is_object() ? reference : Json::object();
}

void rememberIntake(const Field& field, const std::string& shape, const Json& reference) {
  Json kept = reference;
  for (const char* own : {"file", "sha256", "rows", "x", "y"}) {  // belong to this one text
    kept.erase(own);
  }
  QSettings().setValue(keyOf(field, shape), QByteArray::fromStdString(kept.dump()));
}

}  // namespace fettle::ui
