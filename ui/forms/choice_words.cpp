#include "ui/forms/choice_words.h"

#include <QRegularExpression>
#include <algorithm>

#include "ui/forms/form_words.h"

namespace fettle::ui {
namespace {

constexpr qsizetype mostListed = 8;  ///< more is a wall of words

QStringList wordsIn(const QString& text) {
  static const QRegularExpression between(QStringLiteral("[\\s,:;()]+"));
  return text.split(between, Qt::SkipEmptyParts);
}

bool holdsAll(const QString& label, const QStringList& words) {
  return !words.isEmpty() && std::all_of(words.begin(), words.end(),
                                         [&](const QString& word) { return beginsAWord(label, word); });
}

}  // namespace

bool beginsAWord(const QString& label, const QString& letters) {
  const QStringList words = wordsIn(label);
  return std::any_of(words.begin(), words.end(),
                     [&](const QString& word) { return word.startsWith(letters, Qt::CaseInsensitive); });
}

std::vector<int> labelsMeant(const QStringList& labels, const QString& text) {
  const QStringList words = wordsIn(text);
  std::vector<int> meant;
  for (int i = 0; i < labels.size(); ++i) {
    if (labels[i].compare(text, Qt::CaseInsensitive) == 0) {
      return {i};
    }
    if (holdsAll(labels[i], words)) {
      meant.push_back(i);
    }
  }
  return meant;
}

QString choicesInWords(const QStringList& labels) {
  return labels.size() <= mostListed
             ? labels.join(QStringLiteral(", "))
             : FormWords::tr("one of %1 in the list, which Space opens").arg(labels.size());
}

}  // namespace fettle::ui
