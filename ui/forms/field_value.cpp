#include "ui/forms/field_value.h"

#include <QLocale>
#include <QRegularExpression>
#include <algorithm>
#include <cmath>

#include "core/fields/field_reader.h"
#include "core/measure/format.h"
#include "core/measure/number_text.h"
#include "core/measure/unit.h"
#include "ui/forms/choice_words.h"
#include "ui/forms/form_words.h"

namespace fettle::ui {
namespace {

QString named(const Field& field, const QString& sentence) {
  return QString::fromStdString(field.label) + ": " + sentence;
}

tl::expected<Json, QString> numberFrom(const Field& field, const QString& text) {
  const auto number = numberFromKeyboard(text.toStdString());
  if (!number) {
    return tl::unexpected(named(field, QString::fromStdString(number.error())));
  }
  FieldReader reader;  // the bounds and their sentence are the reader's
  if (!reader.number(field, *number)) {
    return tl::unexpected(QString::fromStdString(reader.problem().value_or(std::string())));
  }
  constexpr double exactWholes = 9007199254740992.0;  // 2^53
  return field.whole && std::abs(*number) < exactWholes ? Json(std::llround(*number)) : Json(*number);
}

tl::expected<Json, QString> choiceFrom(const Field& field, const QString& text) {
  QStringList words;
  for (const auto& choice : field.choices) {
    if (text.compare(QString::fromStdString(choice.key), Qt::CaseInsensitive) == 0) {
      return Json(choice.key);
    }
    words << QString::fromStdString(choice.label);
  }
  const auto meant = labelsMeant(words, text);
  if (meant.size() == 1) {
    return Json(field.choices[static_cast<std::size_t>(meant.front())].key);
  }
  QStringList possible;
  for (const int i : meant) {
    possible << words[i];
  }
  return tl::unexpected(named(
      field, possible.isEmpty()
                 ? FormWords::tr("\"%1\" is not one of the choices: %2.").arg(text, choicesInWords(words))
                 : FormWords::tr("\"%1\" may be %2.").arg(text, choicesInWords(possible))));
}

tl::expected<Json, QString> yesNoFrom(const Field& field, const QString& text) {
  for (const bool answer : {true, false}) {
    if (text.compare(valueText(field, answer), Qt::CaseInsensitive) == 0) {
      return Json(answer);
    }
  }
  return tl::unexpected(named(field, FormWords::tr("\"%1\" is neither yes nor no.").arg(text)));
}

}  // namespace

bool isBlank(const Json& value) {
  return value.is_null() || (value.is_string() && value.get_ref<const std::string&>().empty()) ||
         (value.is_array() && value.empty());
}

const Json& memberOf(const Json& object, const std::string& key) {
  static const Json blank;
  const auto found = object.find(key);
  return object.is_object() && found != object.end() ? *found : blank;
}

QString captionOf(const Field& field) {
  const QString label = QString::fromStdString(field.label);
  const QString unit = QString::fromStdString(displayUnit(field.unit));
  return unit.isEmpty() ? label : label + ", " + unit;
}

QString objectNameOf(const std::string& key) {
  QString name;
  bool capital = false;
  for (const QChar c : QString::fromStdString(key)) {
    if (c == '_' || c == '-' || c == '.') {
      capital = !name.isEmpty();
    } else {
      name += capital ? c.toUpper() : c;
      capital = false;
    }
  }
  return name;
}

QString numberText(double value) {
  const std::string text = formatNumber(value);
  if (numberFromText(text) == value) {
    return QString::fromStdString(text);
  }
  QString exact = QString::number(value, 'g', QLocale::FloatingPointShortest);
  if (exact.startsWith('-')) {
    exact[0] = QChar(0x2212);  // the one of an exponent stays as it is read
  }
  return exact;
}

int decimalsOf(double value) {
  const QString text = numberText(value);
  const auto point = text.indexOf('.');
  return point < 0 || text.contains('e') ? 0 : static_cast<int>(text.size() - point - 1);
}

QString valueText(const Field& field, const Json& value) {
  if (value.is_number()) {
    return numberText(value.get<double>());
  }
  if (value.is_boolean()) {
    return value.get<bool>() ? FormWords::tr("yes") : FormWords::tr("no");
  }
  if (value.is_object()) {
    return valueText(field, memberOf(value, "file"));
  }
  if (!value.is_string()) {
    return isBlank(value) ? QString() : QString::fromStdString(value.dump());
  }
  const auto& text = value.get_ref<const std::string&>();
  for (const auto& choice : field.choices) {
    if (choice.key == text) {
      return QString::fromStdString(choice.label);
    }
  }
  return QString::fromStdString(text);
}

tl::expected<Json, QString> valueFromText(const Field& field, const QString& text) {
  const QString trimmedText = text.trimmed();
  if (trimmedText.isEmpty()) {
    return Json();
  }
  switch (field.kind) {
    case FieldKind::number:
      return numberFrom(field, trimmedText);
    case FieldKind::choice:
      return choiceFrom(field, trimmedText);
    case FieldKind::yesNo:
      return yesNoFrom(field, trimmedText);
    case FieldKind::text:
      return Json(trimmedText.toStdString());
    default:
      return tl::unexpected(named(field, FormWords::tr("a file is chosen, it cannot be typed.")));
  }
}

std::vector<Json> answersOf(const Field& field) {
  if (field.kind == FieldKind::yesNo) {
    return {true, false};
  }
  std::vector<Json> answers;
  for (const Choice& choice : field.choices) {
    answers.emplace_back(choice.key);
  }
  return answers;
}

bool isUnfinished(const Field& field, const QString& text) {
  static const QRegularExpression beginning(
      QStringLiteral("^\\s*[-+\u2212]?([.,]?|\\d*[.,]?\\d*[eE][-+]?)$"));
  if (field.kind != FieldKind::number || beginning.match(text).hasMatch()) {
    return field.kind == FieldKind::number;
  }
  const auto number = numberFromKeyboard(text.toStdString());
  const bool mayGrow = number && *number >= 0 && field.minimum && *number < *field.minimum;
  const bool mayFall = number && *number <= 0 && field.maximum && *number > *field.maximum;
  return mayGrow || mayFall;
}

}  // namespace fettle::ui
