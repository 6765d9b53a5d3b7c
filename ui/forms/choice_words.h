#pragma once
#include <QStringList>
#include <vector>

namespace fettle::ui {

/// Whether letters begin a word of a label: "mov" in "bed moves in y".
bool beginsAWord(const QString& label, const QString& letters);

/// Which labels may be meant by a text, as people write them: the one that is equal but for its case; else
/// those that hold all its words or their beginnings in any order, "x steps per mm" for "x: Steps per mm,
/// steps/mm".
std::vector<int> labelsMeant(const QStringList& labels, const QString& text);

/// What can be chosen, for the end of a sentence: the labels, or how many there are.
QString choicesInWords(const QStringList& labels);

}  // namespace fettle::ui
