#pragma once
#include <QElapsedTimer>
#include <QStringList>

#include "core/fields/field.h"

namespace fettle::ui {

/// Letters typed in quick succession that spell the beginning of one of several words. One letter again and
/// again walks the words that begin with it.
class TypedWord {
 public:
  /// Adds a letter. @param now the word chosen at present, -1 for none
  /// @return the word to choose: when none begins so, the one chosen before the first letter
  int add(const QStringList& words, int now, const QString& letter);
  /// The same for what may be answered to a field. @return the answer to take, null for none
  Json answer(const Field& field, const Json& now, const QString& letter);
  /// Whether a letter typed now goes on with the word.
  bool isOpen() const;
  /// What was typed counts no more, nor that it was refused.
  void end();
  /// One sentence when no word begins with what was typed, else empty.
  const QString& problem() const { return m_problem; }
  /// The same with the label of the field before it.
  QString problemOf(const Field& field) const;
  /// Whether Enter stays where it is: once after a refusal, so that this is seen; the next one goes on.
  bool holdsEnter();

 private:
  QString m_text;
  int m_before = -1;
  QString m_problem;
  QElapsedTimer m_since;
};

}  // namespace fettle::ui
