#include "ui/forms/typed_word.h"

#include <algorithm>

#include "ui/forms/field_value.h"
#include "ui/forms/form_words.h"

namespace fettle::ui {
namespace {

constexpr qint64 typingPause = 1000;  // ms: letters that follow sooner are one word, as in a list

/// The first word from `from` on, round the end, that begins with these letters.
int wordBeginning(const QStringList& words, qsizetype from, const QString& letters) {
  for (qsizetype i = 0; i < words.size(); ++i) {
    const qsizetype at = (from + i) % words.size();
    if (words[at].startsWith(letters, Qt::CaseInsensitive)) {
      return static_cast<int>(at);
    }
  }
  return -1;
}

}  // namespace

bool TypedWord::isOpen() const {
  return m_since.isValid() && m_since.elapsed() < typingPause;
}

int TypedWord::add(const QStringList& words, int now, const QString& letter) {
  if (!isOpen()) {
    m_text.clear();
    m_before = now;
  }
  m_since.start();
  m_text += letter;
  const bool isOneLetter = m_text.count(letter.front(), Qt::CaseInsensitive) == m_text.size();
  int found = wordBeginning(words, m_text.size() > 1 ? std::max(now, 0) : now + 1, m_text);
  if (found < 0 && isOneLetter) {
    found = wordBeginning(words, now + 1, letter);
  }
  m_isFound = found >= 0;
  return m_isFound ? found : m_before;
}

Json TypedWord::answer(const Field& field, const Json& now, const QString& letter) {
  const auto answers = answersOf(field);
  QStringList words;
  for (const Json& one : answers) {
    words << valueText(field, one);
  }
  const auto at = std::find(answers.begin(), answers.end(), now);
  const int chosen = at == answers.end() ? -1 : static_cast<int>(at - answers.begin());
  const int wanted = add(words, chosen, letter);
  return wanted < 0 ? Json() : answers[static_cast<std::size_t>(wanted)];
}

void TypedWord::end() {
  m_since.invalidate();
  m_isFound = true;
}

QString TypedWord::problem() const {
  return m_isFound ? QString() : FormWords::tr("no choice begins with \"%1\".").arg(m_text);
}

}  // namespace fettle::ui
