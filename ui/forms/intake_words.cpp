#include "ui/forms/intake_words.h"

#include "ui/forms/form_words.h"

namespace fettle::ui {
namespace {

const char* keyOf(Delimiter delimiter) {
  switch (delimiter) {
    case Delimiter::comma:
      return "comma";
    case Delimiter::semicolon:
      return "semicolon";
    case Delimiter::tab:
      return "tab";
    case Delimiter::blanks:
      return "blanks";
  }
  return "";
}

}  // namespace

std::vector<Field> formatFields() {
  Field delimiter;
  delimiter.key = "delimiter";
  delimiter.kind = FieldKind::choice;
  delimiter.label = FormWords::tr("columns are parted by").toStdString();
  delimiter.choices = {{"comma", FormWords::tr("commas").toStdString()},
                       {"semicolon", FormWords::tr("semicolons").toStdString()},
                       {"tab", FormWords::tr("tabs").toStdString()},
                       {"blanks", FormWords::tr("blanks").toStdString()}};
  delimiter.fallback = "comma";
  Field sign;
  sign.key = "decimal_sign";
  sign.kind = FieldKind::choice;
  sign.label = FormWords::tr("decimal sign").toStdString();
  sign.choices = {{".", FormWords::tr("point").toStdString()}, {",", FormWords::tr("comma").toStdString()}};
  sign.fallback = ".";
  Field skipped;
  skipped.key = "skipped_lines";
  skipped.label = FormWords::tr("lines left out at the top").toStdString();
  skipped.whole = true;
  skipped.minimum = 0;
  skipped.maximum = 10000;
  return {delimiter, sign, skipped};
}

Json formatValues(const TextFormat& format) {
  return {{"delimiter", keyOf(format.delimiter)},
          {"decimal_sign", std::string(1, format.decimalSign)},
          {"skipped_lines", format.skippedLines}};
}

QString recognisedWords(const TablePreview& preview) {
  QStringList words;
  switch (preview.format.header) {
    case HeaderPlace::none:
      words << FormWords::tr("The columns have no names.");
      break;
    case HeaderPlace::row:
      words << (preview.format.unitsRow
                    ? FormWords::tr("Names of the columns in a line of their own, units below it.")
                    : FormWords::tr("Names of the columns in a line of their own."));
      break;
    case HeaderPlace::comment:
      words << FormWords::tr("Names of the columns in the comment above the rows.");
      break;
  }
  if (preview.format.header == HeaderPlace::none && preview.format.unitsRow) {
    words << FormWords::tr("Units stand above them.");
  }
  if (!preview.comments.empty()) {
    words << FormWords::tr("Comment: %1").arg(QString::fromStdString(preview.comments.front()));
  }
  return words.join(' ');
}

}  // namespace fettle::ui
