#include "ui/forms/typed_word.h"

#include <algorithm>

#include "ui/forms/choice_words.h"
#include "ui/forms/field_value.h"
#include "ui/forms/form_words.h"

namespace fettle::ui {
namespace {

constexpr qint64 typingPause = 1000;  // ms: letters that follow sooner are one word, as in a list

/// The first text from `from` on, round the end, that begins with these letters; else the first of which a
/// later word does.
int wordBeginning(const QStringList& words, qsizetype from, const QString& letters) {
  int later = -1;
  for (qsizetype i = 0; i < words.size(); ++i) {
    const auto at = static_cast<int>((from + i) % words.size());
    if (words[at].startsWith(letters, Qt::CaseInsensitive)) {
      return at;
    }
    later = later < 0 && beginsAWord(words[at], letters) ? at : later;
  }
  return later;
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
  m_problem = found >= 0
                  ? QString()
                  : FormWords::tr("no choice begins with \"%1\": %2.").arg(m_text, choicesInWords(words));
  return found >= 0 ? found : m_before;
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

QString TypedWord::problemOf(const Field& field) const {
  return m_problem.isEmpty() ? m_problem : QString::fromStdString(field.label) + ": " + m_problem;
}

bool TypedWord::holdsEnter() {
  const bool isRefused = !m_problem.isEmpty();
  end();
  return isRefused;
}

void TypedWord::end() {
  m_since.invalidate();
  m_problem.clear();
}

}  // namespace fettle::ui
